import type { Attendance } from './attendance.ts';
import type { Heard, HeardEntry } from './heard.ts';
import { laterOf, laterSaid, mergeByName } from './register.ts';
import type { BoardSetup, Forgotten } from './setup.ts';

/*
 * How two states of one record become one. Each merge is commutative, associative and idempotent,
 * so that answers may come in any order, twice, and by way of two leaders, and the board is the
 * same. Each gives the first state itself where the second has nothing to add: "all of it was
 * known" is a comparison by identity.
 */

/** In the order of `startedAt`, then `id`. */
export const byStart = (a: HeardEntry, b: HeardEntry): number =>
  a.startedAt - b.startedAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Sessions from two sides: each id once, as it was told last. */
export function mergeEntries(
  a: readonly HeardEntry[],
  b: readonly HeardEntry[],
): readonly HeardEntry[] {
  const merged = new Map(a.map((entry) => [entry.id, entry]));
  let isChanged = false;
  for (const entry of b) {
    const there = merged.get(entry.id);
    const next = there === undefined ? entry : laterOf(there, entry, ({ toldAt }) => toldAt);
    if (next === there) continue;
    merged.set(entry.id, next);
    isChanged = true;
  }
  return isChanged ? [...merged.values()].sort(byStart) : a;
}

/**
 * What is known of one person, from two sides: the latest that they said of themselves, the latest
 * that the leader wrote, and every session that was ever told, as it was told last.
 *
 * @param a and @param b have the same key
 */
export function mergeHeard(a: Heard, b: Heard): Heard {
  const told = laterSaid(a.told, b.told);
  const known = laterSaid(a.known, b.known);
  const entries = mergeEntries(a.entries, b.entries);
  if (told === a.told && known === a.known && entries === a.entries) return a;
  const { format, key, programmeId, person } = a;
  return {
    format,
    key,
    programmeId,
    person,
    ...(told === undefined ? {} : { told }),
    ...(known === undefined ? {} : { known }),
    entries,
  };
}

/** One day's list from two sides: for each person the tick that was set or taken back last. */
export function mergeAttendance(a: Attendance, b: Attendance): Attendance {
  const which = laterOf(a.which, b.which, ({ at }) => at);
  const marks = mergeByName(a.marks, b.marks);
  return which === a.which && marks === a.marks ? a : { ...a, which, marks };
}

const byDigest = (a: Forgotten, b: Forgotten): number =>
  a.digest < b.digest ? -1 : a.digest > b.digest ? 1 : 0;

function mergeForgotten(a: readonly Forgotten[], b: readonly Forgotten[]): readonly Forgotten[] {
  const merged = new Map(a.map((each) => [each.digest, each]));
  let isChanged = false;
  for (const each of b) {
    const there = merged.get(each.digest);
    if (there !== undefined && there.at >= each.at) continue;
    merged.set(each.digest, each);
    isChanged = true;
  }
  return isChanged ? [...merged.values()].sort(byDigest) : a;
}

/** What was said of one programme's people from two sides. Nobody who was forgotten is remembered. */
export function mergeSetup(a: BoardSetup, b: BoardSetup): BoardSetup {
  const expected = mergeByName(a.expected, b.expected);
  const keep = laterSaid(a.keep, b.keep);
  const forgotten = mergeForgotten(a.forgotten, b.forgotten);
  if (expected === a.expected && keep === a.keep && forgotten === a.forgotten) return a;
  const { format, programmeId } = a;
  return { format, programmeId, expected, ...(keep === undefined ? {} : { keep }), forgotten };
}
