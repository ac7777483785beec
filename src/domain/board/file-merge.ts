import { isSame } from '../exchange/merge-fields.ts';
import type { Attendance } from './attendance.ts';
import { CAPACITY } from './capacity.ts';
import type { AllBoards } from './file.ts';
import { afterForgetting, forgottenUntil, withForgotten, withoutMarks } from './forget.ts';
import { type Heard, heardKey } from './heard.ts';
import { mergeAttendance, mergeSetup } from './merge.ts';
import type { BoardSetup } from './setup.ts';
import { joinHeard } from './take.ts';

/** What two sides become: records that are put, and keys of those that go. */
export interface MergedBoards extends AllBoards {
  readonly gone: { readonly heard: readonly string[] };
}

/** Digest of `heardKey(programmeId, person)`, by that key. */
export type Digests = ReadonlyMap<string, string>;

/** Keys of everybody whom boards know of: those who told, those ticked, those said to be somebody. */
export function everyKey(...boards: readonly AllBoards[]): readonly string[] {
  const keys = boards.flatMap(({ heard, days }) => [
    ...heard.flatMap(({ key, programmeId, known }) =>
      known?.same === undefined ? [key] : [key, heardKey(programmeId, known.same)],
    ),
    ...days.flatMap(({ programmeId, marks }) =>
      Object.keys(marks).map((person) => heardKey(programmeId, person)),
    ),
  ]);
  return [...new Set(keys)];
}

function joined<T>(
  here: readonly T[],
  given: readonly T[],
  keyOf: (value: T) => string,
  join: (here: T | undefined, given: T) => T | undefined,
): Map<string, T> {
  const all = new Map(here.map((each) => [keyOf(each), each]));
  for (const each of given) {
    const next = join(all.get(keyOf(each)), each);
    if (next !== undefined) all.set(keyOf(each), next);
  }
  return all;
}

/** Until when somebody stays out, by who they are or by whom the leader said that they are. */
const untilOf = (
  setup: BoardSetup | undefined,
  programmeId: string,
  person: string | undefined,
  digests: Digests,
): number | undefined =>
  person === undefined
    ? undefined
    : forgottenUntil(setup, digests.get(heardKey(programmeId, person)));

/** At most as many people as a board holds: those who were there first, then by their keys. */
function withinCapacity(all: Map<string, Heard>, here: ReadonlySet<string>): void {
  const counts = new Map<string, number>();
  const order = [...all.values()].sort(
    (a, b) => Number(here.has(b.key)) - Number(here.has(a.key)) || (a.key < b.key ? -1 : 1),
  );
  for (const { key, programmeId } of order) {
    const count = (counts.get(programmeId) ?? 0) + 1;
    counts.set(programmeId, count);
    if (count > CAPACITY.people && !here.has(key)) all.delete(key);
  }
}

/** Merged, and without what a forgotten person said, wrote, or is said to be. */
function withoutForgotten(
  heard: Map<string, Heard>,
  days: Map<string, Attendance>,
  setups: Map<string, BoardSetup>,
  digests: Digests,
): void {
  for (const each of [...heard.values()]) {
    const { key, programmeId, person, known } = each;
    const setup = setups.get(programmeId);
    const own = untilOf(setup, programmeId, person, digests);
    const left = own === undefined ? each : afterForgetting(each, own);
    const other = untilOf(setup, programmeId, known?.same, digests);
    const last = left && (other === undefined ? left : afterForgetting(left, other));
    if (last === undefined) heard.delete(key);
    else if (last !== each) heard.set(key, last);
    const digest = digests.get(key);
    // Somebody written in by hand who was forgotten as somebody else stays forgotten as well.
    if (other !== undefined && last !== left && digest !== undefined)
      setups.set(programmeId, withForgotten(setup, programmeId, [{ digest, at: other }]));
  }
  for (const day of [...days.values()]) {
    const setup = setups.get(day.programmeId);
    const until = Object.keys(day.marks).flatMap((person): readonly [string, number][] => {
      const at = untilOf(setup, day.programmeId, person, digests);
      return at === undefined ? [] : [[person, at]];
    });
    if (until.length > 0) days.set(day.key, withoutMarks(day, new Map(until)));
  }
}

/**
 * What is here with what somebody else has. Either way round and twice it comes to the same boards,
 * and nobody who was forgotten on one side is on the other. By way of a third device too, but that
 * the way may matter for ticks of somebody of whom one said that they are a forgotten person, and
 * another later that they are not.
 *
 * @param digests of everybody in both: see `everyKey`
 */
export function mergeBoards(here: AllBoards, given: AllBoards, digests: Digests): MergedBoards {
  const before = {
    heard: new Map(here.heard.map((each) => [each.key, each])),
    days: new Map(here.days.map((each) => [each.key, each])),
    setups: new Map(here.setups.map((each) => [each.programmeId, each])),
  };
  const heard = joined(here.heard, given.heard, ({ key }) => key, joinHeard);
  const days = joined(
    here.days,
    given.days,
    ({ key }) => key,
    (a, b) => (a === undefined ? b : mergeAttendance(a, b)),
  );
  const setups = joined(
    here.setups,
    given.setups,
    ({ programmeId }) => programmeId,
    (a, b) => (a === undefined ? b : mergeSetup(a, b)),
  );
  withoutForgotten(heard, days, setups, digests);
  withinCapacity(heard, new Set(before.heard.keys()));
  return {
    heard: changed(heard, before.heard),
    days: changed(days, before.days),
    setups: changed(setups, before.setups),
    gone: { heard: [...before.heard.keys()].filter((key) => !heard.has(key)) },
  };
}

/** Those that say something else than before. */
const changed = <T>(now: ReadonlyMap<string, T>, before: ReadonlyMap<string, T>): readonly T[] =>
  [...now].flatMap(([key, value]) => {
    const was = before.get(key);
    return was === value || (was !== undefined && isSame(was, value)) ? [] : [value];
  });
