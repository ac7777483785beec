import { attendanceKey } from '../../domain/board/attendance.ts';
import { forgetPerson, keysToForget } from '../../domain/board/erase-person.ts';
import { HAND, type Heard, heardKey, isByHand } from '../../domain/board/heard.ts';
import type { BoardSetup } from '../../domain/board/setup.ts';
import {
  described,
  marked,
  nobody,
  unsaid,
  type Words,
  withExpected,
  withKeep,
} from '../../domain/board/written.ts';
import { fail, ok } from '../../domain/result.ts';
import type { BoardState } from '../board-contract.ts';
import type { BoardDesk, Done } from './desk.ts';
import { writeWithDigests } from './with-digests.ts';

/** What a leader may write and take out. */
export type Writing = Pick<
  BoardState,
  'addPerson' | 'describe' | 'isSame' | 'forget' | 'mark' | 'expect' | 'keep'
>;

/** The id of somebody who told; of one who was written in by hand, of whom they were said to be. */
const toldId = (heard: Heard): string | undefined =>
  isByHand(heard) ? heard.known?.same : heard.person;

/** Writes what a leader says of people, each as one change of what lies there. */
export function createWriting(desk: BoardDesk, newId: () => string): Writing {
  const { now } = desk;

  /** Changes one person's words, where they are there. */
  function say(programmeId: string, person: string, words: Words): Done {
    const key = heardKey(programmeId, person);
    return desk.write(
      ({ heard }) => ({ heard: heard.slice(0, 1).map((each) => described(each, words, now())) }),
      { heard: [key], days: [] },
    );
  }

  function setup(programmeId: string, change: (before: BoardSetup) => BoardSetup): Done {
    return desk.write(
      ({ setups }) => ({
        setups: [
          change(setups.find((each) => each.programmeId === programmeId) ?? unsaid(programmeId)),
        ],
      }),
      { heard: [], days: [] },
    );
  }

  const forget: Writing['forget'] = (programmeId, person) =>
    writeWithDigests(
      desk,
      (here) => keysToForget(here, programmeId, person),
      (here, digests) => forgetPerson(here, { programmeId, person, now: now(), digests }),
    );

  return {
    async addPerson(programmeId, { name, group }) {
      const person = `${HAND}${newId()}`;
      const made = described(nobody(programmeId, person), { name, group }, now());
      const done = await desk.write(() => ({ heard: [made] }), { heard: [made.key], days: [] });
      return done.ok ? ok(person) : done;
    },
    describe: (programmeId, person, words) => say(programmeId, person, words),
    async isSame(programmeId, byHand, person) {
      if (person === undefined) return say(programmeId, byHand, { same: '' });
      let told: string | undefined;
      const keys = [byHand, person].map((each) => heardKey(programmeId, each));
      const done = await desk.write(
        ({ heard }) => {
          const [hand, other] = keys.map((key) => heard.find((each) => each.key === key));
          told = other && toldId(other);
          if (hand === undefined || told === undefined) return {};
          return { heard: [described(hand, { same: told }, now())] };
        },
        { heard: keys, days: [] },
      );
      if (!done.ok) return done;
      return told === undefined ? fail({ code: 'not-ours', detail: 'nobody who told' }) : done;
    },
    forget,
    mark: (programmeId, day, person, present) =>
      desk.write(
        ({ days }) => ({
          days: [marked(days[0], programmeId, day, { person, present, now: now() })],
        }),
        { heard: [], days: [attendanceKey(programmeId, day.date)] },
      ),
    expect: (programmeId, group, count) =>
      setup(programmeId, (before) => withExpected(before, group, count, now())),
    keep: (programmeId, on) => setup(programmeId, (before) => withKeep(before, on, now())),
  };
}
