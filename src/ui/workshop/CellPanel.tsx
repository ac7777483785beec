import { Link } from 'wouter';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { week as ofWeek, desk as words } from '../../copy/workshop.ts';
import { cellAt as cellOf } from '../../domain/workshop/places.ts';
import type { CellPlace } from '../../domain/workshop/sheet.ts';
import { cellAt, hearAt } from './addresses.ts';
import { CellEditor } from './CellEditor.tsx';
import { ChecksHere } from './ChecksPanel.tsx';
import { useEdit } from './workshop-context.tsx';

/** One session: where it is, its editor, how to hear it, and what may deserve another look. */
export function CellPanel({ open, at }: { open: OpenSheet; at: CellPlace }) {
  const edit = useEdit();
  const { key, sheet, readings } = open;
  const group = sheet.groups.find(({ id }) => id === at.group);
  const reading = readings[at.week]?.[at.group]?.[at.session];
  const sessions = sheet.weeks[at.week]?.sessions[at.group]?.length ?? 1;
  if (group === undefined || reading === undefined) return null;
  return (
    <div className="stack">
      <h2 tabIndex={-1}>{words.cell(at.week + 1, group.name, at.session + 1, sessions)}</h2>
      <Neighbours open={open} at={at} />
      <CellEditor
        key={`${at.week} ${at.group} ${at.session}`}
        at={at}
        sheet={sheet}
        reading={reading}
        onEdit={edit}
        actions={
          reading.plan !== undefined && (
            <Link href={hearAt(key, at)} className="button">
              {words.hear}
            </Link>
          )
        }
      />
      <ChecksHere open={open} at={at} />
    </div>
  );
}

/** From one session to the next without going back to the table. */
function Neighbours({ open: { key, sheet }, at }: { open: OpenSheet; at: CellPlace }) {
  const column = sheet.groups.findIndex(({ id }) => id === at.group);
  const beside = [
    { place: { ...at, session: at.session - 1 }, isBefore: true },
    { place: { ...at, session: at.session + 1 }, isBefore: false },
    { place: { ...at, week: at.week - 1, session: 0 }, isBefore: true },
    { place: { ...at, week: at.week + 1, session: 0 }, isBefore: false },
    { place: { ...at, group: sheet.groups[column - 1]?.id ?? '', session: 0 }, isBefore: true },
    { place: { ...at, group: sheet.groups[column + 1]?.id ?? '', session: 0 }, isBefore: false },
  ].filter(({ place }) => cellOf(sheet, place) !== undefined);
  const said = (place: CellPlace): string => {
    if (place.week !== at.week) return words.week(place.week + 1);
    if (place.group === at.group) return ofWeek.session(place.session + 1);
    return sheet.groups.find(({ id }) => id === place.group)?.name ?? '';
  };
  return (
    <nav className="row" aria-label={words.table}>
      {beside.map(({ place, isBefore }) => (
        <Link key={cellAt(key, place)} href={cellAt(key, place)} className="text-button">
          {isBefore && (
            <span aria-hidden="true" className="arrow">
              {'← '}
            </span>
          )}
          {said(place)}
          {!isBefore && (
            <span aria-hidden="true" className="arrow">
              {' →'}
            </span>
          )}
        </Link>
      ))}
    </nav>
  );
}
