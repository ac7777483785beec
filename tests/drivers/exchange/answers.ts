import fc from 'fast-check';
import type { Teller, Telling } from '../../../src/domain/exchange/tell.ts';
import { type Feeling, type LogEntry, NIGGLE_PLACES } from '../../../src/domain/log/entry.ts';
import { localDate } from '../../../src/domain/log/local-date.ts';
import { lock, makePairs, publicText, readOut } from '../../../src/platform/keys/curve.ts';
import type { SealPair } from '../../../src/platform/keys/seal.ts';

/** Sunday, 11 April 2027, 18:00 UTC: the evening of the event. */
export const EVENING = Date.UTC(2027, 3, 11, 18);

/** A leader's pair for sealing, its private half such that it cannot be read out. */
export async function sealPair(): Promise<SealPair> {
  const { subtle } = globalThis.crypto;
  const { sign, seal } = await makePairs(subtle);
  const { openWith } = await lock(subtle, await readOut(subtle, sign.privateKey, seal.privateKey));
  return { seal: await publicText(subtle, seal.publicKey), openWith };
}

export interface EntryWish {
  readonly id: string;
  readonly day?: number;
  readonly programme?: string;
  readonly group?: string;
  readonly feeling?: Feeling;
}

/** A session of the marsh programme, 31 min, on a day from 1 March 2027. */
export function entry({
  id,
  day = 0,
  programme = 'heron-loop-spring',
  group = 'wren',
  feeling = {},
}: EntryWish): LogEntry {
  const startedAt = Date.UTC(2027, 2, 1 + day, 17, 30);
  return {
    format: 'towpath-log/2',
    id,
    programme: { id: programme, revision: 1, title: 'Six weeks to the Heron Loop' },
    group: { id: group, name: 'Wren' },
    week: 1 + Math.floor(day / 7),
    session: 1 + (day % 7),
    plan: '5 min easy walk; 7 x (1 min walk, 2 min brisk walk); 5 min easy walk',
    target: 50,
    startedAt,
    offsetMinutes: 0,
    zone: 'Europe/London',
    localDate: localDate(startedAt, 0),
    outcome: 'finished',
    doneSeconds: 1860,
    activeSeconds: 1860,
    covered: [[0, 1860]],
    feeling,
    how: 'app',
  };
}

const word = fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' });

const feeling: fc.Arbitrary<Feeling> = fc.record(
  {
    effort: fc.integer({ min: 0, max: 10 }),
    effortLater: fc.integer({ min: 0, max: 10 }),
    niggle: fc.record(
      {
        place: fc.constantFrom(...NIGGLE_PLACES),
        side: fc.constantFrom('left', 'right', 'both'),
        severity: fc.constantFrom(1, 2, 3),
      },
      { requiredKeys: ['place'] },
    ),
    soreness: fc.constant(true as const),
    warningSign: fc.boolean(),
    note: fc.oneof(word, fc.string({ maxLength: 700, unit: 'binary' })),
  },
  { requiredKeys: [] },
);

/** A log of two programmes, its ids all different. */
export const logs: fc.Arbitrary<readonly LogEntry[]> = fc
  .array(
    fc.record({
      day: fc.integer({ min: 0, max: 40 }),
      programme: fc.constantFrom('heron-loop-spring', 'heron-loop-spring', 'marsh-mile'),
      group: fc.constantFrom('wren', 'teal'),
      offsetMinutes: fc.constantFrom(-600, 0, 60, 345, 840),
      feeling,
    }),
    { maxLength: 12 },
  )
  .map((rows) =>
    rows.map(({ offsetMinutes, ...row }, n) => {
      const made = entry({ ...row, id: `session-${n}` });
      return { ...made, offsetMinutes, localDate: localDate(made.startedAt, offsetMinutes) };
    }),
  );

export const tellings = (log: readonly LogEntry[]): fc.Arbitrary<Telling> =>
  fc.record(
    {
      ids: fc.subarray(log.map(({ id }) => id)),
      niggles: fc.boolean(),
      warningSigns: fc.boolean(),
      notes: fc.boolean(),
      name: fc.oneof(word, fc.string({ maxLength: 90, unit: 'binary' })),
    },
    { requiredKeys: ['ids', 'niggles', 'warningSigns', 'notes'] },
  );

export const teller = (log: readonly LogEntry[], more: Partial<Teller> = {}): Teller => ({
  programme: { id: 'heron-loop-spring', revision: 3 },
  group: 'wren',
  person: { secret: '7f'.repeat(16), told: [] },
  log,
  now: EVENING,
  ...more,
});

export const ALL: Omit<Telling, 'ids'> = { niggles: true, warningSigns: true, notes: true };
export const NOTHING_MORE: Omit<Telling, 'ids'> = {
  niggles: false,
  warningSigns: false,
  notes: false,
};
