import { heardKey } from '../../domain/board/heard.ts';
import type { Outcome } from '../../domain/board/take.ts';
import type { IntakeBatch, IntakeReport, Left, LeftWhy } from '../board-contract.ts';

/** Names of sources that are told with a reason: enough to look for them, not a list of a folder. */
const NAMES = 3;

interface Taken {
  answers: number;
  sessions: number;
  readonly people: Set<string>;
}

/** What bringing in has come to, batch by batch. */
export interface Tally {
  /** @param outcomes one for each response of the batch, in their order */
  add(batch: IntakeBatch, outcomes: readonly Outcome[]): void;
  report(): IntakeReport;
}

/** A tally of nothing yet. */
export function createTally(): Tally {
  let found = 0;
  const taken = new Map<string, Taken>();
  const left = new Map<LeftWhy, { count: number; readonly from: Set<string> }>();

  function leave(why: LeftWhy, count: number, names: readonly string[]): void {
    const there = left.get(why) ?? { count: 0, from: new Set() };
    there.count += count;
    for (const name of names) if (name !== '' && there.from.size < NAMES) there.from.add(name);
    left.set(why, there);
  }

  function take({ programmeId, person, sessions }: Extract<Outcome, { taken: true }>): void {
    const there = taken.get(programmeId) ?? { answers: 0, sessions: 0, people: new Set() };
    there.answers += 1;
    there.sessions += sessions;
    there.people.add(heardKey(programmeId, person));
    taken.set(programmeId, there);
  }

  return {
    add(batch, outcomes) {
      found += batch.found;
      for (const { why, count, from } of batch.left) leave(why, count, from);
      for (const [n, outcome] of outcomes.entries()) {
        if (outcome.taken) take(outcome);
        else leave(outcome.why, 1, [batch.from[n] ?? '']);
      }
    },
    report: () => ({
      found,
      taken: Object.fromEntries(
        [...taken].map(([id, { answers, people, sessions }]) => [
          id,
          { answers, people: people.size, sessions },
        ]),
      ),
      left: [...left].map(([why, { count, from }]): Left => ({ why, count, from: [...from] })),
    }),
  };
}
