import type { Edit } from './edit.ts';
import type { Sheet } from './sheet.ts';

/** How many steps can be taken back. */
export const DEPTH = 500;

/** A sheet with the way back, and forward again after going back. */
export interface History {
  /** Oldest first. */
  readonly past: readonly Sheet[];
  readonly present: Sheet;
  /** The next one to come first. */
  readonly future: readonly Sheet[];
  /** The field that is being typed into: more of the same is the same step. */
  readonly typing?: string;
}

/** A sheet with no way back yet. */
export const begin = (sheet: Sheet): History => ({ past: [], present: sheet, future: [] });

/** The one reminder that a list differs in. */
function reminderTyped(before: readonly string[], now: readonly string[]): string | undefined {
  const differing = now.flatMap((text, n) => (text === before[n] ? [] : [n]));
  return before.length === now.length && differing.length === 1
    ? `reminder ${differing[0]}`
    : undefined;
}

/** The field that an edit types into or drags, if it is one: those are made letter by letter. */
function fieldOf(edit: Edit, before: Sheet): string | undefined {
  switch (edit.kind) {
    case 'title':
    case 'leader':
      return edit.kind;
    case 'goal':
      return `goal ${Object.keys(edit).sort().join(' ')}`;
    case 'cell':
      return `cell ${edit.at.week} ${edit.at.group} ${edit.at.session}`;
    case 'focus':
    case 'effort':
      return `${edit.kind} ${edit.week}`;
    case 'group':
      return `group ${edit.id} ${Object.keys(edit.change).sort().join(' ')}`;
    case 'reminders':
      return reminderTyped(before.reminders, edit.reminders);
    default:
      return undefined;
  }
}

/** The history after an edit led to `next`. Nothing changed: nothing to take back. */
export function record(history: History, edit: Edit, next: Sheet): History {
  const { past, present } = history;
  if (next === present) return history;
  const typing = fieldOf(edit, present);
  const isSameStep = typing !== undefined && typing === history.typing && past.length > 0;
  return {
    past: isSameStep ? past : [...past, present].slice(-DEPTH),
    present: next,
    future: [],
    ...(typing === undefined ? {} : { typing }),
  };
}

/** What is typed from now on is a step of its own. */
export const pause = ({ past, present, future }: History): History => ({ past, present, future });

/** One step back; the same history where there is none. */
export function undo(history: History): History {
  const { past, present, future } = history;
  const before = past.at(-1);
  if (before === undefined) return history;
  return { past: past.slice(0, -1), present: before, future: [present, ...future] };
}

/** One step on again; the same history where there is none. */
export function redo(history: History): History {
  const { past, present, future } = history;
  const [next, ...rest] = future;
  return next === undefined ? history : { past: [...past, present], present: next, future: rest };
}
