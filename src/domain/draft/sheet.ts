import { parsePlan } from '../programme/parse.ts';
import { cellsOf } from '../workshop/places.ts';
import type { Cell, CellPlace, Sheet, SheetWeek } from '../workshop/sheet.ts';
import type { Draft, DraftWeek, Focus } from './draft.ts';
import type { Pin, Wish } from './wish.ts';

/** Sentences that a draft writes into a sheet; they stand in `src/copy/draft.ts`. */
export interface DraftWords {
  readonly focus: Readonly<Record<Focus, string>>;
  readonly title: (weeks: number, event: string) => string;
}

/** A pinned cell's plan, or the plan of its last good text. */
function pinOf(cell: Cell, at: CellPlace): readonly Pin[] {
  if (cell.pinned !== true) return [];
  for (const text of [cell.text, cell.good]) {
    const plan = text === undefined ? undefined : parsePlan(text);
    if (text !== undefined && plan?.ok) return [{ at, text, plan: plan.value }];
  }
  return [];
}

/** What is pinned in a sheet and can be read; what cannot is kept all the same by `draftSheet`. */
export const pinsOf = (sheet: Sheet): readonly Pin[] =>
  sheet.weeks.flatMap((each, week) =>
    sheet.groups.flatMap(({ id }) =>
      cellsOf(each, id).flatMap((cell, session) => pinOf(cell, { week, group: id, session })),
    ),
  );

/** The drafted session in every place up to the last pinned one, and the pinned ones as they are. */
function newCells(text: string, before: readonly Cell[]): readonly Cell[] {
  const count =
    1 +
    Math.max(
      0,
      before.findLastIndex(({ pinned }) => pinned === true),
    );
  return Array.from({ length: count }, (_, n) => {
    const cell = before[n];
    return cell?.pinned === true ? cell : { text };
  });
}

function weekOf(
  drafted: DraftWeek,
  wish: Wish,
  words: DraftWords,
  before: SheetWeek | undefined,
): SheetWeek {
  const ours = new Set(Object.values(words.focus));
  const focus = before?.focus.trim() ?? '';
  const sessions = wish.groups.map(({ id }): [string, readonly Cell[]] => {
    return [id, newCells(drafted.cells[id]?.text ?? '', cellsOf(before, id))];
  });
  return {
    // A line that the leader wrote is theirs; one that an earlier draft wrote is not.
    focus: focus === '' || ours.has(focus) ? words.focus[drafted.focus] : focus,
    effort: drafted.effort,
    timesPerWeek: drafted.timesPerWeek,
    sessions: Object.fromEntries(sessions),
    together: 1,
  };
}

/**
 * A draft as a sheet, on the ground of the one that is open: it keeps id, title, leader, reminders
 * and unknown keys, the leader's own focus lines, and every pinned cell exactly as it is. A title
 * is proposed where there is none.
 */
export function draftSheet(draft: Draft, wish: Wish, words: DraftWords, base: Sheet): Sheet {
  const { startDate: _, ...kept } = base;
  return {
    ...kept,
    title: base.title.trim() === '' ? words.title(wish.weeks, wish.goal.name) : base.title,
    ...(wish.startDate === undefined ? {} : { startDate: wish.startDate }),
    goal: wish.goal,
    groups: wish.groups.map(({ id, name, for: who }) => ({ id, name: name.trim(), for: who })),
    weeks: draft.weeks.map((week, n) => weekOf(week, wish, words, base.weeks[n])),
  };
}
