import '../styles/workshop-cell.css';
import { type ReactNode, useState } from 'react';
import type { Reading } from '../../app/workshop-contract.ts';
import { planProblem } from '../../copy/plan.ts';
import { desk } from '../../copy/workshop.ts';
import { parsePlan } from '../../domain/programme/parse.ts';
import type { Edit } from '../../domain/workshop/edit.ts';
import { cellsOf } from '../../domain/workshop/places.ts';
import type { CellPlace, Sheet } from '../../domain/workshop/sheet.ts';
import { CellActions } from './cell/CellActions.tsx';
import { CellReading } from './cell/CellReading.tsx';
import { CellText } from './cell/CellText.tsx';
import { Tapping } from './cell/Tapping.tsx';
import { useTold } from './cell/told.ts';

interface CellEditorProps {
  readonly at: CellPlace;
  readonly sheet: Sheet;
  /** How the cell's text was understood. */
  readonly reading: Reading;
  readonly onEdit: (edit: Edit) => void;
  /** What else can be done with this session, such as hearing it. */
  readonly actions?: ReactNode;
}

/** Where a session is written: typed in shorthand or tapped together, with what came of it. */
export function CellEditor(props: CellEditorProps) {
  const { at } = props;
  const [tapping, setTapping] = useState(false);
  return (
    <OneCell
      key={`${at.week}/${at.group}/${at.session}`}
      {...props}
      tapping={tapping}
      onTapping={setTapping}
    />
  );
}

interface OneCellProps extends CellEditorProps {
  readonly tapping: boolean;
  readonly onTapping: (tapping: boolean) => void;
}

function OneCell({ at, sheet, reading, onEdit, actions, tapping, onTapping }: OneCellProps) {
  const cells = cellsOf(sheet.weeks[at.week], at.group);
  const cell = cells[at.session];
  const told = useTold(reading);
  if (cell === undefined) return null;
  const group = sheet.groups.find(({ id }) => id === at.group)?.name ?? at.group;
  const write = (text: string) => onEdit({ kind: 'cell', at, text });
  const type = (text: string) => {
    const tooLong = longerThanCanBe(text);
    if (tooLong !== undefined) told.refuse(tooLong);
    else {
      told.onTyped();
      write(text);
    }
  };
  return (
    <section
      className="cell-editor"
      aria-label={desk.cell(at.week + 1, group, at.session + 1, cells.length)}
    >
      <CellText text={cell.text} problem={reading.problems[0]} onText={type}>
        {(field) => <CellReading text={cell.text} reading={reading} field={field} onText={type} />}
      </CellText>
      <Tapping
        plan={reading.plan}
        replaces={reading.problems.length > 0 && cell.text.trim() !== ''}
        open={tapping}
        onOpen={onTapping}
        onText={write}
        told={told}
      />
      <p role="status" className={told.kind === 'read' ? 'for-readers' : `cell-told ${told.kind}`}>
        {told.text}
      </p>
      <CellActions at={at} sheet={sheet} reading={reading} onEdit={onEdit} />
      {actions !== undefined && <div className="row">{actions}</div>}
    </section>
  );
}

/** A text that no sheet takes, which only pasting can make: said at once, and left out whole. */
function longerThanCanBe(text: string): string | undefined {
  const read = parsePlan(text);
  return !read.ok && read.error.code === 'text-long' ? planProblem(read.error) : undefined;
}
