import fc from 'fast-check';
import { type Attendance, attendanceKey } from '../../../src/domain/board/attendance.ts';
import { type Heard, type HeardEntry, heardKey } from '../../../src/domain/board/heard.ts';
import type { BoardSetup } from '../../../src/domain/board/setup.ts';
import type { Response, ToldEntry } from '../../../src/domain/exchange/response.ts';
import { NIGGLE_PLACES } from '../../../src/domain/log/entry.ts';
import { localDate } from '../../../src/domain/log/local-date.ts';

export const PROGRAMME = 'heron-loop-spring';
export const ROSA = '7f'.repeat(16);
export const TAMSIN = '3c'.repeat(16);
/** Sunday, 7 March 2027, 18:00 UTC. */
export const SUNDAY = Date.UTC(2027, 2, 7, 18);
const HOUR_MS = 3_600_000;

/** A session of a day from Monday, 1 March 2027, 31 min. */
export function told(id: string, day = 0, more: Partial<ToldEntry> = {}): ToldEntry {
  const startedAt = Date.UTC(2027, 2, 1 + day, 17, 30);
  return {
    id,
    week: 1 + Math.floor(day / 7),
    session: 1,
    startedAt,
    offsetMinutes: 0,
    zone: 'Europe/London',
    localDate: localDate(startedAt, 0),
    doneSeconds: 1860,
    activeSeconds: 1860,
    target: 50 as ToldEntry['target'],
    ...more,
  };
}

export const response = (more: Partial<Response> = {}): Response => ({
  format: 'towpath-response/1',
  programme: { id: PROGRAMME, revision: 1 },
  secret: ROSA,
  group: 'wren',
  sentAt: SUNDAY,
  leftOut: 0,
  entries: [told('one')],
  ...more,
});

/** Few moments, so that many are the same: that is where an order can be forgotten. */
const moment = fc.integer({ min: 0, max: 3 }).map((hours) => SUNDAY + hours * HOUR_MS);
const name = fc.constantFrom('Rosa', 'Tamsin', 'Perran');
const group = fc.constantFrom('wren', 'dunlin');
/** Without what was not said at all. */
const some = <T extends object>(
  shape: { [K in keyof T]: fc.Arbitrary<T[K]> },
  needed: (keyof T)[],
) => fc.record(shape, { requiredKeys: needed }) as unknown as fc.Arbitrary<T>;

const toldEntries: fc.Arbitrary<readonly ToldEntry[]> = fc.uniqueArray(
  fc
    .record({
      id: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
      day: fc.integer({ min: 0, max: 2 }),
      effort: fc.option(fc.integer({ min: 0, max: 10 }), { nil: undefined }),
      place: fc.option(fc.constantFrom(...NIGGLE_PLACES), { nil: undefined }),
    })
    .map(({ id, day, effort, place }) =>
      told(id, day, {
        ...(effort === undefined ? {} : { effort }),
        ...(place === undefined ? {} : { niggle: { place } }),
      }),
    ),
  { selector: ({ id }) => id, maxLength: 5 },
);

/** What people of one programme may send, some of it with the same moments and ids. */
export const responses: fc.Arbitrary<Response> = fc
  .record({
    secret: fc.constantFrom(ROSA, TAMSIN),
    name: fc.option(name, { nil: undefined }),
    group,
    sentAt: moment,
    leftOut: fc.integer({ min: 0, max: 2 }),
    revision: fc.integer({ min: 1, max: 2 }),
    entries: toldEntries,
  })
  .map(({ name: said, revision, ...rest }) =>
    response({
      ...rest,
      programme: { id: PROGRAMME, revision },
      ...(said === undefined ? {} : { name: said }),
    }),
  );

const byStart = (a: HeardEntry, b: HeardEntry): number =>
  a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1);

/** What two devices may know of one person. */
export const heards: fc.Arbitrary<Heard> = fc
  .record({
    told: fc.option(
      some({ at: moment, name, group, revision: fc.constant(1), leftOut: fc.constant(0) }, [
        'at',
        'group',
        'revision',
        'leftOut',
      ]),
      { nil: undefined },
    ),
    known: fc.option(some({ at: moment, name, group, same: fc.constant(TAMSIN) }, ['at']), {
      nil: undefined,
    }),
    entries: toldEntries,
    times: fc.array(moment, { minLength: 5, maxLength: 5 }),
  })
  .map(({ told: self, known, entries, times }) => ({
    format: 'towpath-heard/1' as const,
    key: heardKey(PROGRAMME, ROSA),
    programmeId: PROGRAMME,
    person: ROSA,
    ...(self === undefined ? {} : { told: self }),
    ...(known === undefined ? {} : { known }),
    entries: entries
      .map((entry, n) => ({ ...entry, group: 'wren', toldAt: times[n] ?? SUNDAY }))
      .sort(byStart),
  }));

export const DATE = '2027-03-06';

export const days: fc.Arbitrary<Attendance> = fc.record({
  format: fc.constant('towpath-attendance/1' as const),
  key: fc.constant(attendanceKey(PROGRAMME, DATE)),
  programmeId: fc.constant(PROGRAMME),
  date: fc.constant(DATE),
  which: fc.record({
    week: fc.constantFrom(1, 2),
    session: fc.constantFrom(1, 2),
    at: moment,
  }),
  marks: fc.dictionary(
    fc.constantFrom(ROSA, TAMSIN, 'hand.1'),
    fc.record({ present: fc.boolean(), at: moment }),
  ),
});

const digest = fc.constantFrom('A'.repeat(43), 'B'.repeat(43), 'C'.repeat(43));

export const setups: fc.Arbitrary<BoardSetup> = fc
  .record({
    expected: fc.dictionary(
      // Groups may be called what every object has.
      fc.constantFrom('wren', 'dunlin', 'constructor'),
      fc.record({ count: fc.integer({ min: 0, max: 9 }), at: moment }),
    ),
    keep: fc.option(fc.record({ on: fc.boolean(), at: moment }), { nil: undefined }),
    forgotten: fc.uniqueArray(fc.record({ digest, at: moment }), {
      selector: (each) => each.digest,
    }),
  })
  .map(({ expected, keep, forgotten }) => ({
    format: 'towpath-board/1' as const,
    programmeId: PROGRAMME,
    expected: { ...expected },
    ...(keep === undefined ? {} : { keep }),
    forgotten: [...forgotten].sort((a, b) => (a.digest < b.digest ? -1 : 1)),
  }));
