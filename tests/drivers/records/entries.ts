/** Sessions of a fictional participant, and everything else that a phone keeps, made by chance. */
import fc from 'fast-check';
import { type LogEntry, NIGGLE_PLACES } from '../../../src/domain/log/entry.ts';
import type { Following, Pause } from '../../../src/domain/log/following.ts';
import { isoDate } from '../../../src/domain/programme/calendar.ts';
import { NINE_O_CLOCK } from '../sessions.ts';

/** A session in the second week, Wren, 31 minutes, rated 5. */
export const entry = (more: Partial<LogEntry> = {}): LogEntry => ({
  format: 'towpath-log/2',
  id: 'heron-1',
  programme: { id: 'heron-loop-spring', revision: 1, title: 'Six weeks to the Heron Loop' },
  group: { id: 'wren', name: 'Wren' },
  week: 2,
  session: 1,
  plan: '5 min easy walk; 7 x (1 min walk, 2 min brisk walk); 5 min easy walk',
  target: 50,
  startedAt: NINE_O_CLOCK,
  offsetMinutes: 0,
  zone: 'Europe/London',
  localDate: '2027-03-07',
  outcome: 'finished',
  doneSeconds: 1860,
  activeSeconds: 1860,
  covered: [[0, 1860]],
  feeling: { effort: 5 },
  feltAt: NINE_O_CLOCK + 2_000_000,
  how: 'app',
  ...more,
});

const moment = fc.integer({ min: 0, max: 6 }).map((n) => NINE_O_CLOCK + n * 1000);

const feeling = fc.record(
  {
    effort: fc.integer({ min: 0, max: 10 }),
    effortLater: fc.integer({ min: 0, max: 10 }),
    niggle: fc.record(
      { place: fc.constantFrom(...NIGGLE_PLACES), severity: fc.constantFrom(1, 2, 3) },
      { requiredKeys: ['place'] },
    ),
    soreness: fc.constant(true as const),
    warningSign: fc.boolean(),
    note: fc.string({ unit: 'binary' }),
  },
  { requiredKeys: [] },
) as fc.Arbitrary<LogEntry['feeling']>;

export const IDS = ['a', 'b', 'c', 'd', 'e'] as const;
export const PROGRAMME_IDS = ['heron-loop-spring', 'heron-loop-autumn'] as const;

/** One session as several phones may know it: times and what was done are the same on all. */
export const someEntry: fc.Arbitrary<LogEntry> = fc
  .tuple(
    fc.constantFrom(...IDS),
    feeling,
    fc.option(moment),
    fc.option(moment),
    fc.option(fc.integer({ min: 1, max: 9000 })),
    fc.integer({ min: 0, max: 3600 }),
  )
  .map(([id, felt, feltAt, editedAt, distanceM, doneSeconds]) => {
    const n = IDS.indexOf(id);
    const { feltAt: _, ...rest } = entry();
    return {
      ...rest,
      id,
      programme: { ...rest.programme, id: PROGRAMME_IDS[n % 2] ?? '' },
      startedAt: NINE_O_CLOCK + n * 86_400_000,
      localDate: isoDate(20_884 + n),
      feeling: felt,
      ...(feltAt === null ? {} : { feltAt }),
      ...(editedAt === null ? {} : { editedAt }),
      ...(distanceM === null ? {} : { distanceM }),
      doneSeconds,
    };
  });

const day = fc.integer({ min: 0, max: 40 }).map((n) => isoDate(20_878 + n));
const why = fc.constantFrom<Pause['why'][]>('holiday', 'illness', 'other');

/** In order and apart, the last one perhaps open. */
export const somePauses: fc.Arbitrary<readonly Pause[]> = fc
  .tuple(fc.uniqueArray(day, { maxLength: 6 }), fc.array(why, { minLength: 6, maxLength: 6 }))
  .map(([days, whys]) => {
    const sorted = [...days].sort();
    return sorted.flatMap((from, n): Pause[] => {
      if (n % 2 === 1) return [];
      const to = sorted[n + 1];
      return [{ from, ...(to === undefined ? {} : { to }), why: whys[n] ?? 'other' }];
    });
  });

export const someFollowing: fc.Arbitrary<Following> = fc
  .record(
    {
      format: fc.constant('towpath-following/1' as const),
      programmeId: fc.constantFrom(...PROGRAMME_IDS),
      startedOn: fc.constantFrom('2027-03-01', '2027-03-08', '2027-03-15'),
      pauses: somePauses,
      decisions: fc
        .uniqueArray(
          fc.record({
            on: day,
            week: fc.integer({ min: 1, max: 3 }),
            group: fc.constantFrom('wren', 'dunlin'),
            why: fc.constantFrom('go-on' as const, 'ease' as const, 'chosen' as const),
          }),
          { maxLength: 5, selector: (made) => JSON.stringify(made) },
        )
        .map((list) => [...list].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))),
    },
    { requiredKeys: ['format', 'programmeId', 'pauses', 'decisions'] },
  )
  .map((made) => made as Following);
