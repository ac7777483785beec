import { describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../../src/app/demo/demo.ts';
import { DEMO } from '../../../src/app/demo/read.ts';
import { isReminderId } from '../../../src/domain/cues/reminders.ts';
import type { Part, Plan, Step } from '../../../src/domain/programme/plan.ts';
import { isRunning, PARTS } from '../../../src/domain/programme/plan.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { mainEnd, planTotals } from '../../../src/domain/programme/totals.ts';
import { reviewOutline } from '../../../src/domain/review/review.ts';

const result = readProgramme(DEMO_PROGRAMME_TEXT);
if (!result.ok) throw new Error(JSON.stringify(result.error));
const programme = result.value;
const { weeks, groups } = programme;
const groupIds = groups.map(({ id }) => id);

const plansOf = (week: number, group: string): readonly Plan[] =>
  (weeks[week]?.sessions[group] ?? []).map(({ plan }) => plan);
const allPlans = weeks.flatMap((_, week) => groupIds.flatMap((group) => plansOf(week, group)));

/** Every step in turn, so that these checks do not lean on the totals under test. */
const steps = (plan: Plan, parts: readonly Part[] = PARTS): readonly Step[] => {
  const expand = (items: Plan['main']): readonly Step[] =>
    items.flatMap((item) =>
      item.kind === 'step'
        ? [item]
        : Array.from({ length: item.count }, () => expand(item.items)).flat(),
    );
  return parts.flatMap((part) => expand(plan[part]));
};

/** Longest stretch without a walk, in seconds. */
const longestRun = (plan: Plan): number => {
  let longest = 0;
  let now = 0;
  for (const step of steps(plan)) {
    now = isRunning(step.activity) ? now + step.duration / 1000 : 0;
    longest = Math.max(longest, now);
  }
  return longest;
};

/** Over the sessions of a week, the largest value. */
const most = (group: string, measure: (plan: Plan) => number): readonly number[] =>
  weeks.map((_, week) => Math.max(...plansOf(week, group).map(measure)));

const runMinutes = (plan: Plan): number => planTotals(plan).runSeconds / 60;

describe('the programme that the app starts with', () => {
  it('FILE-12 what was read of it when the app was made is what the reader makes of it now', () => {
    expect(DEMO).toStrictEqual(programme);
  });

  it('FILE-12 it is six weeks from a Monday to the event on the last Sunday', () => {
    expect(programme).toMatchObject({
      title: 'Six weeks to the Heron Loop',
      startDate: '2027-03-01',
      goal: { name: 'Heron Loop', distanceM: 5000, date: '2027-04-11' },
      leader: { name: 'Imogen', sign: null, seal: null },
    });
    expect(weeks).toHaveLength(6);
    const days = (Date.parse('2027-04-11') - Date.parse('2027-03-01')) / 86_400_000;
    expect(days).toBe(6 * 7 - 1);
  });

  it('FILE-12 one group only walks, one mostly walks, one mostly runs, one runs on', () => {
    expect(groups).toHaveLength(4);
    const share = (group: string): readonly number[] =>
      weeks.flatMap((_, week) =>
        plansOf(week, group).map(
          (plan) => planTotals(plan).runSeconds / planTotals(plan).mainSeconds,
        ),
      );
    expect(Math.max(...share('wren'))).toBe(0);
    expect(Math.max(...share('dunlin'))).toBeLessThanOrEqual(0.5);
    expect(Math.min(...share('dunlin'))).toBeGreaterThan(0);
    expect(Math.min(...share('curlew'))).toBeGreaterThan(0.5);
    expect(Math.min(...share('swift'))).toBeGreaterThan(0.85);
  });

  it('FILE-12 the group that should reach it runs a whole main set without a walk', () => {
    const whole = weeks.map((_, week) =>
      plansOf(week, 'swift').some((plan) =>
        steps(plan, ['main']).every(({ activity }) => isRunning(activity)),
      ),
    );
    expect(whole).toEqual([false, false, false, false, true, true]);
    expect(Math.max(...most('swift', longestRun))).toBe(27 * 60);
  });

  it('FILE-12 every session begins and ends with 5 min of walking or more', () => {
    for (const plan of allPlans) {
      const walking = (part: 'warm-up' | 'cool-down'): number =>
        steps(plan, [part])
          .filter(({ activity }) => activity.endsWith('walk'))
          .reduce((sum, step) => sum + step.duration, 0);
      expect(walking('warm-up')).toBeGreaterThanOrEqual(300_000);
      expect(walking('cool-down')).toBeGreaterThanOrEqual(300_000);
      expect(steps(plan)[0]?.activity).toMatch(/walk$/);
      expect(
        steps(plan, ['warm-up', 'cool-down']).some(({ activity }) => isRunning(activity)),
      ).toBe(false);
    }
  });

  it('FILE-12 main sets end within 30 s of each other in every session of every week', () => {
    for (const [week] of weeks.entries()) {
      const ends = groupIds.flatMap((group) => plansOf(week, group).map(mainEnd));
      expect(Math.max(...ends) - Math.min(...ends)).toBeLessThanOrEqual(30_000);
    }
  });

  it('FILE-12 sessions last from 25 to 45 min, and not all the same', () => {
    const minutes = allPlans.map((plan) => planTotals(plan).seconds / 60);
    expect(Math.min(...minutes)).toBe(25);
    expect(Math.max(...minutes)).toBe(45);
    expect(new Set(minutes).size).toBeGreaterThanOrEqual(6);
  });

  it('FILE-12 running rises week by week, by 4 min at most, until the week of the event', () => {
    for (const group of ['dunlin', 'curlew', 'swift']) {
      const minutes = most(group, runMinutes).slice(0, 5);
      for (const [n, value] of minutes.slice(1).entries()) {
        expect(value).toBeGreaterThan(minutes[n] ?? 0);
        expect(value - (minutes[n] ?? 0)).toBeLessThanOrEqual(4);
      }
    }
  });

  it('FILE-12 the longest run grows by 30 % or by a minute and a half at most', () => {
    // Frandsen 2025 (BJSM): a single run much longer than the longest of the last 30 days is the
    // clearest sign of trouble. Its bands are for distance and for experienced runners; from runs
    // of a minute or two, steps are larger in percent (common practice, no source).
    for (const group of ['dunlin', 'curlew', 'swift']) {
      const longest = most(group, longestRun);
      for (const [n, value] of longest.slice(1).entries()) {
        const before = Math.max(...longest.slice(0, n + 1));
        expect(value).toBeLessThanOrEqual(Math.max((before * 13) / 10, before + 90));
      }
    }
  });

  it('FILE-12 walkers go further each week as well, until the week of the event', () => {
    const brisk = most('wren', (plan) =>
      steps(plan)
        .filter(({ activity }) => activity === 'brisk walk')
        .reduce((sum, step) => sum + step.duration / 60_000, 0),
    );
    expect(brisk).toEqual([14, 18, 20, 22, 25, 12]);
  });

  it('FILE-12 the week of the event is the lightest for everybody', () => {
    for (const group of groupIds) {
      const lengths = most(group, (plan) => planTotals(plan).seconds);
      expect(lengths[5]).toBe(Math.min(...lengths));
      const running = most(group, runMinutes);
      expect(running[5]).toBeLessThanOrEqual((running[4] ?? 0) * 0.6);
    }
  });

  it('FILE-12 targets rise from 50 and ease off, each week has a focus, and two or three sessions', () => {
    expect(weeks.map(({ effort }) => effort)).toEqual([50, 50, 55, 60, 60, 50]);
    for (const { focus, timesPerWeek, together } of weeks) {
      expect(focus.length).toBeGreaterThan(20);
      expect(timesPerWeek.min).toBe(2);
      expect(timesPerWeek.max).toBeLessThanOrEqual(3);
      expect(together).toBe(1);
    }
  });

  it('FILE-12 it shows what the shorthand can do', () => {
    expect(
      weeks.some(({ sessions }) => Object.values(sessions).every((list) => list.length === 2)),
    ).toBe(true);
    expect(DEMO_PROGRAMME_TEXT).toMatch(/sets of/);
    expect(DEMO_PROGRAMME_TEXT).toMatch(/Warm-up: .*\\nMain: .*\\nCool-down: /);
    const all = allPlans.flatMap((plan) => steps(plan));
    expect(all.filter(({ note }) => note !== undefined).length).toBeGreaterThan(3);
    expect(all.filter(({ effort }) => effort !== undefined).length).toBeGreaterThan(3);
    expect(
      allPlans.some(({ main }) =>
        main.some(
          (item) => item.kind === 'repeat' && item.items.some(({ kind }) => kind === 'repeat'),
        ),
      ),
    ).toBe(true);
  });

  it('FILE-12 reminders are spoken ones and ones to be read', () => {
    const spoken = programme.reminders.filter(isReminderId);
    expect(spoken.length).toBeGreaterThanOrEqual(5);
    expect(programme.reminders.length - spoken.length).toBeGreaterThanOrEqual(2);
  });

  it('FILE-12 the check has nothing to say about it', () => {
    expect(reviewOutline(programme)).toEqual([]);
  });
});
