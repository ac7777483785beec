import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ASSUMED_SPEEDS,
  estimateFromMeasured,
  estimateFromSpeeds,
  estimateFromTrial,
  finishBetween,
  measuredSessions,
  speedsAround,
} from '../../../src/domain/back/estimate.ts';
import { EVENT_LIMITS } from '../../../src/domain/back/event-limits.ts';
import { eventSession } from '../../../src/domain/back/event-session.ts';
import { metresOfMix, mixOf } from '../../../src/domain/back/mix.ts';
import { riegel } from '../../../src/domain/back/riegel.ts';
import { dayOf } from '../../../src/domain/programme/dates.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import type { Result } from '../../../src/domain/result.ts';
import { REVIEW_LIMITS } from '../../../src/domain/review/limits.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import { ms } from '../../../src/domain/units.ts';
import { entryWith, TURNS, WALKS } from './entries.ts';

const planOf = (text: string) => {
  const plan = parsePlan(text);
  if (!plan.ok) throw new Error(text);
  return plan.value;
};
const sessionOf = (text: string) => layOut(planOf(text));
const got = <T, E>(result: Result<T, E>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};
const minutes = ({ low, high }: { low: number; high: number }) => [low / 60_000, high / 60_000];
const TODAY = dayOf('2027-04-01') as number;

describe('what an estimate rests on', () => {
  it('EVENT-4 every number has a unit, a standing and says where it comes from', () => {
    for (const [name, { value, unit, standing, from }] of Object.entries(EVENT_LIMITS)) {
      expect([name, value > 0]).toEqual([name, true]);
      expect(unit.length).toBeGreaterThan(0);
      expect(['published', 'common practice']).toContain(standing);
      expect(from.length).toBeGreaterThan(15);
    }
  });

  it('EVENT-4 the paces that the review assumes lie within those assumed here', () => {
    const { walkFast, walkSlow, runFast, runSlow } = EVENT_LIMITS;
    const { walkingPace, runningPace } = REVIEW_LIMITS;
    expect(walkFast.value).toBeLessThan(walkingPace.value);
    expect(walkSlow.value).toBeGreaterThan(walkingPace.value);
    expect(runFast.value).toBeLessThan(runningPace.value);
    expect(runSlow.value).toBeGreaterThan(runningPace.value);
  });
});

describe('from walking and running speeds', () => {
  it('EVENT-2 a session’s mix is its walked and run time, of the whole or of one part', () => {
    expect(mixOf(sessionOf(TURNS))).toEqual({ walk: 16 * 60_000, run: 12 * 60_000 });
    expect(mixOf(sessionOf(TURNS), 'main')).toEqual({ walk: 6 * 60_000, run: 12 * 60_000 });
    expect(mixOf(sessionOf('5 min stretch; 10 min run; 2 min stand'))).toMatchObject({
      run: 10 * 60_000,
      walk: 0,
    });
  });

  it('EVENT-5 all walking at 12:00 per km is about an hour for 5 km, shown as a range', () => {
    // Pace tables, 12:00 per km is 60:00 for 5 km; 5 % either side.
    const found = got(estimateFromSpeeds(5000, sessionOf('30 min walk'), speedsAround(720, 480)));
    expect(minutes(found)[0]).toBeCloseTo(57, 3);
    expect(minutes(found)[1]).toBeCloseTo(63, 3);
  });

  it('EVENT-5 the fast end has the mix of the main part, the slow end that of the whole session', () => {
    const found = got(estimateFromSpeeds(5000, sessionOf(TURNS), ASSUMED_SPEEDS));
    // Worked by hand: main 2 min at 1000/420 and 1 at 1000/640 m/s; whole 12 at 1000/526 and 16
    // at 1000/900 m/s.
    const fast = (2 * (1000 / 420) + 1000 / 640) / 3;
    const slow = (12 * (1000 / 526) + 16 * (1000 / 900)) / 28;
    expect(found.low / 1000).toBeCloseTo(5000 / fast, 2);
    expect(found.high / 1000).toBeCloseTo(5000 / slow, 2);
  });

  it('EVENT-5 a session of standing leads nowhere, and that is said', () => {
    expect(estimateFromSpeeds(5000, sessionOf('10 min stand'), ASSUMED_SPEEDS)).toEqual({
      ok: false,
      error: 'no-moving',
    });
  });

  it('EVENT-5 twice the distance takes twice as long, and faster paces never take longer', () => {
    const pace = fc.integer({ min: 240, max: 1200 });
    fc.assert(
      fc.property(
        fc.integer({ min: 500, max: 20_000 }),
        pace,
        pace,
        fc.integer({ min: 1, max: 100 }),
        fc.constantFrom(TURNS, WALKS, '20 min run'),
        (metres, walk, run, faster, text) => {
          const session = sessionOf(text);
          const one = got(estimateFromSpeeds(metres, session, speedsAround(walk, run)));
          const two = got(estimateFromSpeeds(2 * metres, session, speedsAround(walk, run)));
          expect(one.low).toBeLessThan(one.high);
          expect(Math.abs(two.low - 2 * one.low)).toBeLessThanOrEqual(2);
          expect(Math.abs(two.high - 2 * one.high)).toBeLessThanOrEqual(2);
          const quick = speedsAround(walk - faster, run - faster);
          const other = got(estimateFromSpeeds(metres, session, quick));
          expect(other.low).toBeLessThanOrEqual(one.low);
          expect(other.high).toBeLessThanOrEqual(one.high);
        },
      ),
    );
  });

  it('EVENT-5 at the paces that were given, the session itself takes its own time', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 1200 }),
        fc.integer({ min: 240, max: 900 }),
        (walk, run) => {
          const session = sessionOf(TURNS);
          const mix = mixOf(session);
          const metres = metresOfMix(mix, { walk: 1000 / walk, run: 1000 / run });
          const found = got(estimateFromSpeeds(metres, session, speedsAround(walk, run)));
          expect(found.low).toBeLessThanOrEqual(mix.walk + mix.run);
          expect(found.high).toBeGreaterThanOrEqual(mix.walk + mix.run);
        },
      ),
    );
  });
});

describe('from measured sessions', () => {
  const measured = (distanceM: number, activeSeconds: number, localDate = '2027-03-29') =>
    entryWith({ distanceM, activeSeconds, doneSeconds: activeSeconds, localDate });

  it('EVENT-6 it goes from a little faster than the fastest to somewhat slower than the slowest', () => {
    // 3 km in 30 min and in 33 min: 50 and 55 min for 5 km at the same speed.
    const found = got(
      estimateFromMeasured(5000, [measured(3000, 1800), measured(3000, 1980)], TODAY),
    );
    expect(minutes(found)[0]).toBeCloseTo(50 * 0.95, 3);
    expect(minutes(found)[1]).toBeCloseTo(55 * 1.1, 3);
    expect(found.entries).toHaveLength(2);
  });

  it('EVENT-6 sessions without a distance, too short, too long ago or out of reach are left out', () => {
    const none = [
      entryWith({ localDate: '2027-03-29' }),
      measured(900, 600),
      measured(3000, 1800, '2027-02-04'),
      measured(40_000, 1800),
      measured(1000, 9000),
      measured(3000, 0),
    ];
    expect(measuredSessions(none, TODAY)).toEqual([]);
    expect(estimateFromMeasured(5000, none, TODAY)).toEqual({ ok: false, error: 'no-measured' });
    expect(measuredSessions([measured(3000, 1800, '2027-02-05')], TODAY)).toHaveLength(1);
  });

  it('EVENT-6 of many, the latest six count, in whatever order they come', () => {
    const many = Array.from({ length: 10 }, (_, n) =>
      measured(3000 + n, 1800, `2027-03-${String(n + 10)}`),
    );
    const found = measuredSessions([...many].reverse(), TODAY);
    expect(found.map(({ distanceM }) => distanceM)).toEqual([3009, 3008, 3007, 3006, 3005, 3004]);
    expect(measuredSessions(many, TODAY)).toEqual(found);
  });
});

describe('from an all-out trial', () => {
  it('EVENT-3 the range lies around what the formula gives, wider on the slow side', () => {
    const trial = { time: ms(1_200_000), metres: 3000 };
    const { low, high } = got(estimateFromTrial(5000, trial));
    const middle = got(riegel(trial.time, 3000, 5000));
    expect(low).toBeLessThan(middle);
    expect(high - middle).toBeGreaterThan(middle - low);
  });

  it('EVENT-3 there and back gives the same time, and longer distances take longer', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 600, max: 3000 }),
        fc.integer({ min: 1000, max: 10_000 }),
        fc.integer({ min: 1000, max: 10_000 }),
        (seconds, from, to) => {
          const there = riegel(ms(seconds * 1000), from, to);
          if (!there.ok) return;
          const back = got(riegel(there.value, to, from));
          // Whole milliseconds: the way there is rounded by half of one at most.
          expect(Math.abs(back - seconds * 1000)).toBeLessThan(15);
          if (to > from) expect(there.value / to).toBeGreaterThan((seconds * 1000) / from);
        },
      ),
    );
  });

  it('EVENT-3 what the formula refuses is refused with its reason', () => {
    expect(estimateFromTrial(5000, { time: ms(60_000), metres: 400 })).toEqual({
      ok: false,
      error: 'trial-time',
    });
  });
});

describe('the session that is most like the event', () => {
  const week = (text: string) => ({
    focus: '',
    effort: 50,
    timesPerWeek: { min: 2, max: 3 },
    sessions: { wren: text.split('|').map((each) => ({ text: each, plan: planOf(each) })) },
  });

  it('EVENT-8 it is the one that leads farthest, of several the latest', () => {
    const weeks = [week('20 min walk|20 min run'), week('20 min run'), week('30 min stand')];
    const found = eventSession({ weeks }, 'wren');
    expect(found?.week).toBe(2);
    expect(found?.timeline.total).toBe(20 * 60_000);
    expect(eventSession({ weeks }, 'swift')).toBeUndefined();
    expect(eventSession({ weeks: [week('30 min stand')] }, 'wren')).toBeUndefined();
  });
});

describe('the finish', () => {
  it('EVENT-7 it is the start and the range, in whole minutes rounded outwards', () => {
    const range = { low: ms(40.5 * 60_000), high: ms(56.2 * 60_000) };
    expect(finishBetween(10 * 60, range)).toEqual([640, 657]);
  });

  it('EVENT-7 a start late in the evening ends after midnight', () => {
    const range = { low: ms(40 * 60_000), high: ms(60 * 60_000) };
    expect(finishBetween(23 * 60 + 15, range)).toEqual([23 * 60 + 55, 15]);
  });
});
