import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadOf, sessionBack } from '../../../src/domain/back/session.ts';
import { byWeek, sumOf, weeksUpTo } from '../../../src/domain/back/weeks.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import { ACTIVITIES } from '../../../src/domain/programme/plan.ts';
import { weeksBack } from '../../drivers/all-weeks.ts';
import { dayAfter, entryWith, laid } from './entries.ts';

const step = fc
  .record({ seconds: fc.integer({ min: 5, max: 300 }), activity: fc.constantFrom(...ACTIVITIES) })
  .map(({ seconds, activity }) => ({ seconds, activity }));
const steps = fc.array(step, { minLength: 1, maxLength: 8 });
type Steps = readonly { readonly seconds: number; readonly activity: string }[];

const planOf = (list: Steps, times = 1): string =>
  list.map(({ seconds, activity }) => `${seconds * times} s ${activity}`).join('; ');
const lengthOf = (list: Steps): number => list.reduce((sum, { seconds }) => sum + seconds, 0);

const place = fc.double({ min: 0, max: 1, noNaN: true });
const cuts = fc.array(place, { maxLength: 6 }).map((list) => [...list].sort((a, b) => a - b));
const intervals = (places: readonly number[], length: number): [number, number][] =>
  places
    .map((at) => Math.round(at * length))
    .flatMap((from, n, all): [number, number][] => {
      const to = all[n + 1];
      return n % 2 === 0 && to !== undefined && to > from ? [[from, to]] : [];
    });

const feeling = fc
  .option(fc.integer({ min: 0, max: 10 }), { nil: undefined })
  .map((effort): LogEntry['feeling'] => (effort === undefined ? {} : { effort }));

const entry: fc.Arbitrary<LogEntry> = fc
  .record({
    list: steps,
    places: cuts,
    extra: fc.integer({ min: 0, max: 600 }),
    day: fc.integer({ min: -400, max: 400 }),
    feeling,
    how: fc.constantFrom('app', 'there', 'by-hand' as const),
    share: fc.double({ min: 0, max: 2, noNaN: true }),
  })
  .map(({ list, places, extra, day, how, share, ...rest }) => {
    const length = lengthOf(list);
    const covered = how === 'app' ? intervals(places, length) : [];
    const heard = covered.reduce((sum, [from, to]) => sum + to - from, 0);
    const doneSeconds = how === 'app' ? heard : Math.round(share * length);
    return entryWith({
      plan: planOf(list),
      covered,
      doneSeconds,
      activeSeconds: doneSeconds + extra,
      localDate: dayAfter(day),
      how: how as LogEntry['how'],
      ...rest,
    });
  });

describe('laws of looking back', () => {
  it('BACK-4 the sum over the weeks is the sum over the sessions', () => {
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 30 }), (entries) => {
        const weeks = weeksBack(entries);
        const sessions = entries.map((each) => sessionBack(each, laid(each.plan)));
        expect(sumOf(weeks)).toEqual(sumOf(sessions));
        expect(weeks.flatMap(({ list }) => list)).toHaveLength(entries.length);
      }),
    );
  });

  it('BACK-4 the order in which the entries come does not matter', () => {
    fc.assert(
      fc.property(
        fc
          .array(entry, { maxLength: 20 })
          .chain((list) =>
            fc.tuple(
              fc.constant(list),
              fc.shuffledSubarray(list, { minLength: list.length, maxLength: list.length }),
            ),
          ),
        ([list, other]) => {
          expect(weeksBack(other)).toEqual(weeksBack(list));
        },
      ),
    );
  });

  it('BACK-4 a week looked at by itself is the same as among all', () => {
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 20 }), (entries) => {
        const log = byWeek(entries);
        for (const week of weeksBack(entries))
          expect(weeksUpTo(log, week.monday, 1)).toEqual([week]);
      }),
    );
  });

  it('BACK-4 a week never holds a day of another', () => {
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 20 }), (entries) => {
        for (const { monday, list } of weeksBack(entries))
          for (const { entry: each } of list) {
            const day = Date.parse(`${each.localDate}T00:00:00Z`) / 86_400_000;
            expect(day - monday).toBeGreaterThanOrEqual(0);
            expect(day - monday).toBeLessThan(7);
          }
      }),
    );
  });

  it('BACK-2 what was walked, run and stood is what was gone through, to the second', () => {
    fc.assert(
      fc.property(entry, (each) => {
        const { walk, run, still, extra, moved } = sessionBack(each, laid(each.plan));
        const whole = each.how !== 'app' && each.doneSeconds === 0;
        const done = whole ? laid(each.plan).total : each.doneSeconds * 1000;
        expect(walk + run + still).toBe(done);
        if (each.activeSeconds > 0) expect(moved).toBe(each.activeSeconds * 1000);
        expect(extra).toBe(Math.max(0, moved - done));
      }),
    );
  });

  it('BACK-4 a plan three times as long, gone through the same way, has three times the minutes', () => {
    fc.assert(
      fc.property(steps, cuts, (list, places) => {
        const covered = intervals(places, lengthOf(list));
        const active = covered.reduce((sum, [from, to]) => sum + to - from, 0);
        const at = (times: number) => {
          const plan = planOf(list, times);
          const longer = covered.map(([from, to]) => [from * times, to * times] as const);
          const seconds = { activeSeconds: active * times, doneSeconds: active * times };
          const feeling = { effort: 4 };
          return sessionBack(entryWith({ plan, covered: longer, ...seconds, feeling }), laid(plan));
        };
        const [one, three] = [at(1), at(3)];
        for (const what of ['walk', 'run', 'still', 'moderate', 'vigorous', 'load'] as const)
          expect(three[what]).toBe(3 * one[what]);
        expect(three.longestRun).toBe(3 * (one.longestRun ?? 0));
      }),
    );
  });

  it('BACK-5 load grows with the rating and never falls below nothing', () => {
    fc.assert(
      fc.property(entry, fc.integer({ min: 0, max: 9 }), (each, effort) => {
        const at = (rating: number) =>
          sessionBack({ ...each, feeling: { effort: rating } }, laid(each.plan));
        const step = loadOf(at(effort + 1).load) - loadOf(at(effort).load);
        expect(step).toBeCloseTo(at(effort).moved / 60_000, 6);
        expect(at(effort).load).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('BACK-6 the longest running stretch is never more than was run', () => {
    fc.assert(
      fc.property(entry, (each) => {
        const { longestRun = 0, run, basis } = sessionBack(each, laid(each.plan));
        if (basis !== 'shared-out') expect(longestRun).toBeLessThanOrEqual(run);
      }),
    );
  });

  it('BACK-8 moderate and vigorous together are never more than was moved over the plan', () => {
    fc.assert(
      fc.property(entry, (each) => {
        const { moderate, vigorous, walk, run } = sessionBack(each, laid(each.plan));
        expect(moderate + vigorous).toBeLessThanOrEqual(walk + run);
        // All running is vigorous by the table.
        expect(vigorous).toBe(run);
      }),
    );
  });
});
