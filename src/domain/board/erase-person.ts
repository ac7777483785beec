import type { AllBoards } from './file.ts';
import type { Digests } from './file-merge.ts';
import { sameAs, withForgotten } from './forget.ts';
import { type Heard, heardKey, lastSaid } from './heard.ts';
import { peopleOf } from './people.ts';

/** Whom a board is to forget, and when. */
export interface Forgetting {
  readonly programmeId: string;
  readonly person: string;
  /** UTC milliseconds. */
  readonly now: number;
  /** Of all of `keysToForget`. */
  readonly digests: Digests;
}

const ofProgramme = (heard: readonly Heard[], programmeId: string): readonly Heard[] =>
  heard.filter((each) => each.programmeId === programmeId);

/** Ids of everybody whom a row stands for: to forget one of them is to forget them all. */
function everyIdOf(
  { heard }: Pick<AllBoards, 'heard'>,
  programmeId: string,
  person: string,
): readonly string[] {
  const own = ofProgramme(heard, programmeId);
  const row = peopleOf(own).find(({ ids }) => ids.includes(person))?.ids ?? [person];
  return [...new Set(row.flatMap((id) => [id, ...sameAs(own, id)]))];
}

/** Keys of everybody who is forgotten with a person. */
export const keysToForget = (
  here: Pick<AllBoards, 'heard'>,
  programmeId: string,
  person: string,
): readonly string[] => everyIdOf(here, programmeId, person).map((id) => heardKey(programmeId, id));

/**
 * What changes when a person is forgotten: their records go, and every tick of theirs in every
 * list, and everybody who was said to be them. What is left is a digest, from which nobody can be
 * found, that keeps out what they had sent before; of somebody whose clock is ahead up to the last
 * that they sent.
 */
export function forgetPerson(
  { heard, days, setups }: AllBoards,
  { programmeId, person, now, digests }: Forgetting,
) {
  const ids = everyIdOf({ heard }, programmeId, person);
  const keys = ids.map((id) => heardKey(programmeId, id));
  const gone = heard.filter(({ key }) => keys.includes(key));
  const at = gone.map(lastSaid).reduce((a, b) => Math.max(a, b), now);
  const setup = setups.find((each) => each.programmeId === programmeId);
  const forgotten = keys.map((key) => ({ digest: digests.get(key) ?? '', at }));
  return {
    gone: { heard: keys },
    days: days
      .filter((day) => day.programmeId === programmeId)
      .flatMap((day) => {
        const marks = Object.entries(day.marks);
        const left = marks.filter(([id]) => !ids.includes(id));
        return left.length === marks.length ? [] : [{ ...day, marks: Object.fromEntries(left) }];
      }),
    setups: [withForgotten(setup, programmeId, forgotten)],
  };
}
