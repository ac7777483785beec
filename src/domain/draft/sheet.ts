import { parsePlan } from '../programme/parse.ts';
import { ID } from '../programme/shape.ts';
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
  sheet.weeks.flatMap(({ sessions }, week) =>
    sheet.groups.flatMap(({ id }) =>
      (Object.hasOwn(sessions, id) ? (sessions[id] ?? []) : []).flatMap((cell, session) =>
        pinOf(cell, { week, group: id, session }),
      ),
    ),
  );

/** The drafted session in every place up to the last pinned one, and the pinned ones as they are. */
function cellsOf(text: string, before: readonly Cell[]): readonly Cell[] {
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
    const cells =
      before !== undefined && Object.hasOwn(before.sessions, id) ? before.sessions[id] : [];
    return [id, cellsOf(drafted.cells[id]?.text ?? '', cells ?? [])];
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

/** A name as an id: letters and digits of it, or `programme` where it has none. */
function idOf(name: string): string {
  const id = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  return ID.test(id) ? id : 'programme';
}

/**
 * A draft as a sheet. Of `base` it keeps the programme's id, title, leader, reminders and unknown
 * keys, the leader's own focus lines, and every pinned cell exactly as it is.
 */
export function draftSheet(draft: Draft, wish: Wish, words: DraftWords, base?: Sheet): Sheet {
  const { startDate: _, ...kept } = base ?? {
    id: idOf(wish.goal.name),
    title: words.title(wish.weeks, wish.goal.name),
    language: 'en',
    leader: '',
    reminders: [],
  };
  return {
    ...kept,
    ...(wish.startDate === undefined ? {} : { startDate: wish.startDate }),
    goal: wish.goal,
    groups: wish.groups.map(({ id, name, for: who }) => ({ id, name, for: who })),
    weeks: draft.weeks.map((week, n) => weekOf(week, wish, words, base?.weeks[n])),
  };
}
