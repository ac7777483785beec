/** Histories of any kind, for what has to hold of all of them. */
import fc from 'fast-check';
import type { Situation } from '../../../src/domain/advice/situation.ts';
import type { Feeling, LogEntry } from '../../../src/domain/log/entry.ts';
import { NIGGLE_PLACES } from '../../../src/domain/log/entry.ts';
import type { Decision, Following, Pause } from '../../../src/domain/log/following.ts';
import { formatPlan } from '../../../src/domain/programme/format.ts';
import type { Programme, SessionPlan } from '../../../src/domain/programme/programme.ts';
import { plan } from '../programme/arbitraries.ts';
import { around, sessionOf } from '../review/outlines.ts';
import { did, followed, HERON, on, UNDATED } from './people.ts';

const GROUPS = HERON.groups.map(({ id }) => id);

/** A day from a week before the programme to two months after it. */
export const dayArb: fc.Arbitrary<string> = fc
  .tuple(fc.integer({ min: 0, max: 14 }), fc.integer({ min: 1, max: 7 }))
  .map(([week, weekday]) => on(week, weekday));

export const feelingArb: fc.Arbitrary<Feeling> = fc
  .record(
    {
      effort: fc.integer({ min: 0, max: 10 }),
      effortLater: fc.integer({ min: 0, max: 10 }),
      niggle: fc.record(
        {
          place: fc.constantFrom(...NIGGLE_PLACES.slice(0, 4)),
          side: fc.constantFrom('left' as const, 'right' as const, 'both' as const),
          severity: fc.constantFrom(1 as const, 2 as const, 3 as const),
        },
        { requiredKeys: ['place'] },
      ),
      soreness: fc.constant(true as const),
    },
    { requiredKeys: [] },
  )
  .chain((feeling) =>
    // Most sessions hurt nothing.
    fc.integer({ min: 0, max: 5 }).map((n): Feeling => {
      const { niggle: _, ...rest } = feeling;
      return n === 0 ? feeling : rest;
    }),
  );

export const entryArb: fc.Arbitrary<LogEntry> = fc
  .record({
    date: dayArb,
    week: fc.integer({ min: 1, max: 6 }),
    session: fc.integer({ min: 1, max: 3 }),
    group: fc.constantFrom('curlew', 'curlew', 'curlew', ...GROUPS),
    feeling: feelingArb,
    done: fc.constantFrom(100, 100, 100, 80, 60, 40, 10, 0),
  })
  .map(did);

const pausesArb: fc.Arbitrary<readonly Pause[]> = fc
  .array(fc.tuple(dayArb, dayArb, fc.constantFrom('holiday', 'illness', 'other'), fc.boolean()), {
    maxLength: 2,
  })
  .map((list) =>
    list.map(([a, b, why, isOpen]): Pause => {
      const [from, to] = a < b ? [a, b] : [b, a];
      return isOpen ? { from, why } : { from, to, why };
    }),
  );

const decisionsArb: fc.Arbitrary<readonly Decision[]> = fc.array(
  fc.record({
    on: dayArb,
    week: fc.integer({ min: 1, max: 6 }),
    group: fc.constantFrom(...GROUPS),
    why: fc.constantFrom(
      'go-on' as const,
      'repeat' as const,
      'ease' as const,
      'step-up' as const,
      're-entry' as const,
      'chosen' as const,
    ),
  }),
  { maxLength: 2 },
);

const followingArb: fc.Arbitrary<Following> = fc
  .tuple(pausesArb, decisionsArb, fc.option(dayArb, { nil: undefined }))
  .map(([pauses, decisions, startedOn]) =>
    followed({ pauses, decisions, ...(startedOn && { startedOn }) }),
  );

export const historyArb: fc.Arbitrary<Situation> = fc
  .record(
    {
      programme: fc.constantFrom(HERON, HERON, HERON, UNDATED),
      group: fc.constantFrom('curlew', 'curlew', ...GROUPS),
      entries: fc.array(entryArb, { maxLength: 16 }),
      today: dayArb,
      following: followingArb,
    },
    { requiredKeys: ['programme', 'group', 'entries', 'today'] },
  )
  .map((made) => made as Situation);

/** A few rated sessions of the last days in one group: histories in which felt effort decides. */
export const ratedArb: fc.Arbitrary<Situation> = fc
  .record({
    today: fc
      .tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 1, max: 7 }))
      .map(([week, weekday]) => on(week, weekday)),
    group: fc.constantFrom(...GROUPS),
    felt: fc.array(
      fc.tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 9 }), fc.boolean()),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ today, group, felt }): Situation => {
    const last = Date.parse(`${today}T00:00:00Z`);
    const entries = felt.map(([effort, ago, isWhole]) => {
      const date = new Date(last - ago * 86_400_000).toISOString().slice(0, 10);
      const week = Math.max(1, Math.ceil((Date.parse(date) - Date.UTC(2027, 1, 28)) / 604_800_000));
      return did({ date, week, group, feeling: { effort }, done: isWhole ? 100 : 90 });
    });
    return { programme: HERON, group, entries, today };
  });

const sessionArb: fc.Arbitrary<SessionPlan> = plan.map((made) => ({
  text: formatPlan(made),
  plan: made,
}));

/** Sets of something harder and a walk, in the lengths that leaders write. */
const setsArb: fc.Arbitrary<SessionPlan> = fc
  .record({
    count: fc.integer({ min: 1, max: 10 }),
    hard: fc.constantFrom('brisk walk', 'easy jog', 'run', 'run @ 75%'),
    hardSeconds: fc.constantFrom(30, 60, 75, 90, 120, 180, 300, 600),
    walkSeconds: fc.constantFrom(30, 60, 90, 120, 180),
  })
  .map(({ count, hard, hardSeconds, walkSeconds }) =>
    sessionOf(around(`${count} x (${hardSeconds} s ${hard}, ${walkSeconds} s walk)`)),
  );

/** Programmes of any plans, or of sets; nothing else in them is as a leader would write it. */
export const programmeArb: fc.Arbitrary<Programme> = fc
  .constantFrom(sessionArb, setsArb)
  .chain((each) => programmeOf(each));

const programmeOf = (session: fc.Arbitrary<SessionPlan>): fc.Arbitrary<Programme> =>
  fc
    .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 4 }))
    .chain(([groups, weeks]) => {
      const ids = Array.from({ length: groups }, (_, n) => `bird-${n}`);
      return fc
        .array(
          fc.array(fc.array(session, { minLength: 1, maxLength: 2 }), {
            minLength: groups,
            maxLength: groups,
          }),
          { minLength: weeks, maxLength: weeks },
        )
        .map(
          (cells): Programme => ({
            ...UNDATED,
            groups: ids.map((id) => ({ id, name: id, for: '' })),
            weeks: cells.map((row) => ({
              focus: '',
              effort: 50,
              timesPerWeek: { min: 2, max: 3 },
              sessions: Object.fromEntries(row.map((list, n) => [ids[n] ?? '', list])),
            })),
          }),
        );
    });
