import { formatPlan } from '../programme/format.ts';
import { parsePlan } from '../programme/parse.ts';
import { tidy } from '../programme/tidy.ts';
import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import type { Edit, StepUp } from './edit.ts';
import { cellAt, cellsOf, copied, withCell, withCells } from './places.ts';
import type { EditRefusal } from './refusal.ts';
import type { Cell, CellPlace, Sheet } from './sheet.ts';
import { steppedUp } from './step-up.ts';

type Of<K extends Edit['kind']> = Extract<Edit, { readonly kind: K }>;

const isReadable = (text: string): boolean => parsePlan(text).ok;

/** What a cell last said that could be read. */
const lastGood = ({ text, good }: Cell): string | undefined =>
  good === undefined && isReadable(text) ? text : good;

function written(before: Cell, text: string): Cell {
  if (before.text === text) return before;
  const good = isReadable(text) ? undefined : lastGood(before);
  return {
    text,
    ...(good === undefined ? {} : { good }),
    ...(before.pinned ? { pinned: true as const } : {}),
  };
}

/** Writes a session. */
export const writeCell = (sheet: Sheet, { at, text }: Of<'cell'>): Sheet =>
  withCell(sheet, at, (cell) => written(cell, text));

/** Writes a session anew in the usual notation; one that cannot be read stays. */
export const tidyCell = (sheet: Sheet, { at }: Of<'tidy'>): Sheet =>
  withCell(sheet, at, (cell) => {
    const text = tidy(cell.text);
    return text.ok ? written(cell, text.value) : cell;
  });

/** Pins a session, so that drafts leave it alone, or lets it go. */
export const pinCell = (sheet: Sheet, { at, pinned }: Of<'pin'>): Sheet =>
  withCell(sheet, at, (cell) => {
    if (pinned === (cell.pinned ?? false)) return cell;
    return pinned ? { ...cell, pinned: true } : copied(cell);
  });

/** Gives a group one session more in a week, like its last. */
export const addSession = (sheet: Sheet, at: Of<'add-session'>): Sheet =>
  withCells(sheet, at, (cells) => {
    const last = cells.at(-1);
    return last === undefined ? cells : [...cells, copied(last)];
  });

/** Takes a session out of a group's week. */
export const removeSession = (sheet: Sheet, { at }: Of<'remove-session'>): Sheet =>
  withCells(sheet, at, (cells) =>
    cells[at.session] === undefined ? cells : cells.toSpliced(at.session, 1),
  );

/** The places that follow one, in the order in which a copy reaches them. */
export function following(
  sheet: Sheet,
  from: CellPlace,
  along: 'weeks' | 'groups',
): readonly CellPlace[] {
  if (along === 'weeks') {
    return sheet.weeks.map((_, week) => ({ ...from, week })).filter(({ week }) => week > from.week);
  }
  const place = sheet.groups.findIndex(({ id }) => id === from.group);
  return sheet.groups.slice(place + 1).map(({ id }) => ({ ...from, group: id }));
}

/** The cell as it stands so many places on; nothing when a step up is asked of what nobody can read. */
function cellAfter(cell: Cell, step: StepUp, times: number): Cell | undefined {
  if (step.kind === 'same') return copied(cell);
  const plan = parsePlan(lastGood(cell) ?? '');
  if (!plan.ok) return undefined;
  const next = steppedUp(plan.value, step, times);
  return { text: formatPlan(next) };
}

/** Sessions of a week that are still one stand apart when a later one of them is given. */
function put(cells: readonly Cell[], session: number, cell: Cell): readonly Cell[] {
  if (cells[session]?.pinned) return cells;
  const last = cells.at(-1);
  if (last === undefined) return cells;
  const missing = Math.max(0, session - cells.length + 1);
  return [...cells, ...Array.from({ length: missing }, () => copied(last))].with(session, cell);
}

/**
 * Copies a cell along its row or column, one step further at each place. A pinned cell on the way
 * is left alone, and the places behind it are as many steps on as if it were not there.
 */
export function fill(
  sheet: Sheet,
  { from, along, count, step }: Of<'fill'>,
): Result<Sheet, EditRefusal> {
  const cell = cellAt(sheet, from);
  if (cell === undefined) return ok(sheet);
  let next = sheet;
  for (const [n, place] of following(sheet, from, along).entries()) {
    if (count !== undefined && n >= count) break;
    if (cellsOf(sheet.weeks[place.week], place.group).length === 0) continue;
    const copy = cellAfter(cell, step, n + 1);
    if (copy === undefined) return fail({ code: 'unreadable' });
    next = withCells(next, place, (cells) => put(cells, place.session, copy));
  }
  return ok(next);
}
