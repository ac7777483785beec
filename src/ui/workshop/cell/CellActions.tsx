import { useState } from 'react';
import type { Reading } from '../../../app/workshop-contract.ts';
import { cellWords } from '../../../copy/cell.ts';
import { type Along, fill } from '../../../copy/cell-fill.ts';
import { formatPlan } from '../../../domain/programme/format.ts';
import { LIMITS } from '../../../domain/programme/shape.ts';
import type { Edit } from '../../../domain/workshop/edit.ts';
import { cellsOf } from '../../../domain/workshop/places.ts';
import type { CellPlace, Sheet } from '../../../domain/workshop/sheet.ts';
import { FillDialog } from './FillDialog.tsx';
import { placesAfter } from './places-after.ts';

interface CellActionsProps {
  readonly at: CellPlace;
  readonly sheet: Sheet;
  readonly reading: Reading;
  readonly onEdit: (edit: Edit) => void;
}

const WAYS: readonly Along[] = ['weeks', 'groups'];

/** What is done with a session as a whole. */
export function CellActions({ at, sheet, reading, onEdit }: CellActionsProps) {
  const [filling, setFilling] = useState<Along>();
  const cells = cellsOf(sheet.weeks[at.week], at.group);
  const cell = cells[at.session];
  if (cell === undefined) return null;
  const { plan } = reading;
  const readable = plan !== undefined && reading.problems.length === 0;
  const ways = WAYS.filter((along) => placesAfter(sheet, at, along).length > 0);
  return (
    <div className="cell-actions">
      <label className="choice">
        <input
          type="checkbox"
          checked={cell.pinned === true}
          onChange={(event) => onEdit({ kind: 'pin', at, pinned: event.target.checked })}
        />
        <span>{cellWords.keepPinned}</span>
      </label>
      <div className="row">
        {readable && <Tidy differs={formatPlan(plan) !== cell.text} at={at} onEdit={onEdit} />}
        {ways.map((along) => (
          <button
            key={along}
            type="button"
            className="button"
            aria-disabled={!readable}
            onClick={() => readable && setFilling(along)}
          >
            {fill.open[along]}
          </button>
        ))}
        {cells.length < LIMITS.sessions && (
          <button
            type="button"
            className="button"
            onClick={() => onEdit({ kind: 'add-session', week: at.week, group: at.group })}
          >
            {cellWords.addSession}
          </button>
        )}
        {cells.length > 1 && (
          <button
            type="button"
            className="button"
            onClick={() => onEdit({ kind: 'remove-session', at })}
          >
            {cellWords.removeSession}
          </button>
        )}
      </div>
      {!readable && ways.length > 0 && (
        <p className="small soft">{cell.text.trim() === '' ? fill.unwritten : fill.unreadable}</p>
      )}
      {filling !== undefined && plan !== undefined && (
        <FillDialog
          at={at}
          sheet={sheet}
          plan={plan}
          along={filling}
          onEdit={onEdit}
          onLeave={() => setFilling(undefined)}
        />
      )}
    </div>
  );
}

interface TidyProps {
  readonly differs: boolean;
  readonly at: CellPlace;
  readonly onEdit: (edit: Edit) => void;
}

/** Offered while it would change something; it stays under the hand that has just pressed it. */
function Tidy({ differs, at, onEdit }: TidyProps) {
  const [pressed, setPressed] = useState(false);
  if (!differs && !pressed) return null;
  return (
    <button
      type="button"
      className="button"
      aria-disabled={!differs}
      onClick={() => {
        setPressed(true);
        if (differs) onEdit({ kind: 'tidy', at });
      }}
      onBlur={() => setPressed(false)}
    >
      {differs ? cellWords.tidy : cellWords.isTidy}
    </button>
  );
}
