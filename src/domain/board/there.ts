import type { Attendance } from './attendance.ts';
import type { BoardPerson } from './people.ts';

/** That somebody was there, by the leader's list. Both numbers from 1. */
export interface There {
  readonly date: string;
  readonly week: number;
  readonly session: number;
}

const NOBODY: readonly There[] = [];
const known = new WeakMap<readonly Attendance[], ReadonlyMap<string, readonly There[]>>();

/** By person, in the order of days; the same list of days is read once. */
function thereIn(days: readonly Attendance[]): ReadonlyMap<string, readonly There[]> {
  const found = known.get(days);
  if (found !== undefined) return found;
  const made = new Map<string, There[]>();
  for (const { date, which, marks } of [...days].sort((a, b) => (a.date < b.date ? -1 : 1)))
    for (const [person, { present }] of Object.entries(marks)) {
      if (!present) continue;
      const there = { date, week: which.week, session: which.session };
      const list = made.get(person);
      if (list === undefined) made.set(person, [there]);
      else list.push(there);
    }
  known.set(days, made);
  return made;
}

/** The days on which a person was there, each once. */
export function thereOf({ ids }: BoardPerson, days: readonly Attendance[]): readonly There[] {
  const all = thereIn(days);
  const [only] = ids;
  if (ids.length === 1 && only !== undefined) return all.get(only) ?? NOBODY;
  const byDate = new Map(ids.flatMap((id) => all.get(id) ?? []).map((each) => [each.date, each]));
  return [...byDate.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
}

const isSame = (a: There, b: There | undefined): boolean =>
  b !== undefined && a.date === b.date && a.week === b.week && a.session === b.session;

/** Whether two lists say the same, so that what was made of one still holds. */
export const sameDays = (a: readonly There[], b: readonly There[]): boolean =>
  a === b || (a.length === b.length && a.every((each, n) => isSame(each, b[n])));
