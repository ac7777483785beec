/** Finding and replacing parts of a sheet. What did not change stays the same object. */
import type { Cell, CellPlace, Sheet, SheetWeek } from './sheet.ts';

/** The sessions of a group in a week; none for a week or a group that is not there. */
export const cellsOf = (week: SheetWeek | undefined, group: string): readonly Cell[] =>
  week !== undefined && Object.hasOwn(week.sessions, group) ? (week.sessions[group] ?? []) : [];

/** The session at a place, where there is one. */
export const cellAt = (sheet: Sheet, { week, group, session }: CellPlace): Cell | undefined =>
  cellsOf(sheet.weeks[week], group)[session];

/** A sheet with one week changed; the same sheet when nothing did. */
export function withWeek(sheet: Sheet, n: number, change: (week: SheetWeek) => SheetWeek): Sheet {
  const week = sheet.weeks[n];
  if (week === undefined) return sheet;
  const next = change(week);
  return next === week ? sheet : { ...sheet, weeks: sheet.weeks.with(n, next) };
}

/** A sheet with a group's sessions of one week changed; the same sheet when nothing did. */
export const withCells = (
  sheet: Sheet,
  { week, group }: Pick<CellPlace, 'week' | 'group'>,
  change: (cells: readonly Cell[]) => readonly Cell[],
): Sheet =>
  withWeek(sheet, week, (before) => {
    const cells = cellsOf(before, group);
    const next = cells.length === 0 ? cells : change(cells);
    return next === cells ? before : { ...before, sessions: { ...before.sessions, [group]: next } };
  });

/** A sheet with one session changed; the same sheet when nothing did. */
export const withCell = (sheet: Sheet, at: CellPlace, change: (cell: Cell) => Cell): Sheet =>
  withCells(sheet, at, (cells) => {
    const cell = cells[at.session];
    const next = cell && change(cell);
    return next === undefined || next === cell ? cells : cells.with(at.session, next);
  });

/** A list with one of its members at another place; as it was when either place is not there. */
export function moved<T>(list: readonly T[], from: number, to: number): readonly T[] {
  const member = list[from];
  if (member === undefined || list[to] === undefined || from === to) return list;
  return list.toSpliced(from, 1).toSpliced(to, 0, member);
}

/** The same session at another place, where nobody has yet said that it must stay. */
export const copied = ({ text, good }: Cell): Cell => ({
  text,
  ...(good === undefined ? {} : { good }),
});
