import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { programmeWarning } from '../../../src/copy/warning.ts';
import { sourceOf } from '../../../src/copy/warning-sources.ts';
import { formatPlan } from '../../../src/domain/programme/format.ts';
import { type Item, isRunning, type Plan } from '../../../src/domain/programme/plan.ts';
import type { SessionPlan, Week } from '../../../src/domain/programme/programme.ts';
import { factsOf, longestStretch } from '../../../src/domain/review/facts.ts';
import { bandOf } from '../../../src/domain/review/growth.ts';
import { type LimitName, REVIEW_LIMITS } from '../../../src/domain/review/limits.ts';
import type { Outline } from '../../../src/domain/review/outline.ts';
import { reviewOutline } from '../../../src/domain/review/review.ts';
import { WARNING_CODES, WARNING_LIMITS } from '../../../src/domain/review/warning.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import { ms } from '../../../src/domain/units.ts';
import { plan } from '../programme/arbitraries.ts';

const GROUPS = ['wren', 'dunlin', 'sea-birds 2'];

const session: fc.Arbitrary<SessionPlan> = plan.map((made) => ({
  text: formatPlan(made),
  plan: made,
}));

const week: fc.Arbitrary<Week> = fc.record(
  {
    focus: fc.constant(''),
    effort: fc.integer({ min: 0, max: 100 }),
    timesPerWeek: fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 }))
      .map(([a, b]) => ({ min: Math.min(a, b), max: Math.max(a, b) })),
    sessions: fc.dictionary(fc.constantFrom(...GROUPS), fc.array(session, { maxLength: 3 })),
    together: fc.integer({ min: 1, max: 3 }),
  },
  { requiredKeys: ['focus', 'effort', 'timesPerWeek', 'sessions'] },
) as fc.Arbitrary<Week>;

const dated = fc.constantFrom<Partial<Outline>>(
  {},
  { startDate: '2027-03-01' },
  {
    startDate: '2027-03-01',
    goal: { name: 'Heron Loop', distanceM: 5000, date: '2027-04-11' },
  },
);

/** Sheets as they come while they are written: cells may be missing, weeks few or many. */
const outline: fc.Arbitrary<Outline> = fc
  .record({ weeks: fc.array(week, { maxLength: 6 }), dates: dated, groups: fc.nat(3) })
  .map(({ weeks, dates, groups }) => ({
    groups: GROUPS.slice(0, groups).map((id) => ({ id, name: id, for: '' })),
    weeks,
    goal: { name: 'Heron Loop', distanceM: 5000 },
    ...dates,
  }));

/** What a path leads to in the outline: texts of a lone session stand for its list, as in a file. */
function at(path: string, { weeks }: Outline): unknown {
  const file = {
    weeks: weeks.map((each) => ({
      ...each,
      sessions: Object.fromEntries(
        Object.entries(each.sessions).map(([id, list]) => [
          id,
          list.length === 1 ? list[0]?.text : list.map(({ text }) => text),
        ]),
      ),
    })),
  };
  const steps = [...path.matchAll(/\["((?:[^"\\]|\\.)*)"\]|\[(\d+)\]|([\w$-]+)/g)];
  return steps.reduce<unknown>(
    (value, [, quoted, index, key]) =>
      (value as Record<string, unknown> | undefined)?.[quoted ?? index ?? key ?? ''],
    file,
  );
}

/** The longest running, by writing every turn out. */
function slowStretch(made: Plan): number {
  let [longest, now] = [0, 0];
  for (const { activity, start, end } of layOut(made).segments) {
    now = isRunning(activity) ? now + end - start : 0;
    longest = Math.max(longest, now);
  }
  return longest;
}

const scaledItem = (item: Item, by: number): Item =>
  item.kind === 'step'
    ? { ...item, duration: ms(item.duration * by) }
    : { ...item, items: item.items.map((inner) => scaledItem(inner, by)) };
const scaled = (made: Plan, by: number): Plan => ({
  'warm-up': made['warm-up'].map((item) => scaledItem(item, by)),
  main: made.main.map((item) => scaledItem(item, by)),
  'cool-down': made['cool-down'].map((item) => scaledItem(item, by)),
});

describe('what holds of every review', () => {
  it('REV-1 a warning’s path leads to something that is there, and says each thing once', () => {
    fc.assert(
      fc.property(outline, (made) => {
        const warnings = reviewOutline(made);
        for (const { path } of warnings) expect([path, at(path, made)]).not.toContain(undefined);
        const said = warnings.map(({ code, path }) => `${code} ${path}`);
        expect(new Set(said).size).toBe(said.length);
      }),
      { numRuns: 150 },
    );
  });

  it('REV-1 warnings come week by week, the same for the same programme, and change nothing', () => {
    fc.assert(
      fc.property(outline, (made) => {
        const before = JSON.stringify(made);
        const first = reviewOutline(made);
        expect(reviewOutline(made)).toEqual(first);
        // Measured anew, from plans that were never seen.
        expect(reviewOutline(structuredClone(made))).toEqual(first);
        expect(JSON.stringify(made)).toBe(before);
        const weeks = first.map(({ path }) => Number(/\d+/.exec(path)?.[0]));
        expect([...weeks].sort((a, b) => a - b)).toEqual(weeks);
      }),
      { numRuns: 100 },
    );
  });

  it('REV-2 every sentence is whole, whatever was found', () => {
    fc.assert(
      fc.property(outline, (made) => {
        for (const warning of reviewOutline(made)) {
          const text = programmeWarning(warning);
          expect(text).toMatch(/^[A-Z0-9].*\.$/);
          expect(text).not.toMatch(/undefined|NaN|Infinity| {2}|\(\)/);
          expect(text).not.toMatch(/\b(un)?safe|danger|risk|\blimit|\bmust\b|never exceed/i);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('REV-3, REV-4, REV-6 weeks that are all alike have no jumps', () => {
    fc.assert(
      fc.property(week, fc.integer({ min: 2, max: 8 }), (each, count) => {
        const made: Outline = {
          groups: GROUPS.map((id) => ({ id, name: id, for: '' })),
          weeks: Array.from({ length: count }, () => each),
          goal: { name: 'Heron Loop', distanceM: 5000 },
        };
        const jumps = reviewOutline(made).filter(({ code }) => /longer|first|jump/.test(code));
        expect(jumps).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('REV-9 the longest stretch is that of the plan written out', () => {
    fc.assert(
      fc.property(plan, (made) => {
        expect(longestStretch(made)).toBe(slowStretch(made));
      }),
      { numRuns: 400 },
    );
  });

  it('REV-9 lengths scale with the plan, effort does not, and work scales with lengths', () => {
    fc.assert(
      fc.property(plan, fc.integer({ min: 2, max: 5 }), (made, by) => {
        const [one, many] = [factsOf(made), factsOf(scaled(made, by))];
        for (const key of ['total', 'main', 'mainEnd', 'run', 'mainRun', 'brisk', 'walk'] as const)
          expect(many[key]).toBe(one[key] * by);
        expect([many.stretch, many.work]).toEqual([one.stretch * by, one.work * by]);
        expect(many.hardest).toBe(one.hardest);
      }),
    );
  });

  it('REV-4 a band depends on the ratio alone, and never falls as the run grows', () => {
    const order = ['as before', 'small', 'moderate', 'large'];
    const length = fc.integer({ min: 1, max: 9_000_000 });
    fc.assert(
      fc.property(length, length, fc.integer({ min: 1, max: 100 }), (before, now, by) => {
        expect(bandOf(before * by, now * by)).toBe(bandOf(before, now));
        expect(order.indexOf(bandOf(before, now + 1))).toBeGreaterThanOrEqual(
          order.indexOf(bandOf(before, now)),
        );
      }),
    );
  });

  it('REV-9 a plan is measured once', () => {
    const [made] = fc.sample(plan, 1);
    if (made === undefined) throw new Error('no plan');
    expect(factsOf(made)).toBe(factsOf(made));
    expect(factsOf(structuredClone(made))).not.toBe(factsOf(made));
  });
});

/** How a threshold is told where its source is. A number that changes has to be told anew. */
const TOLD: Readonly<Partial<Record<LimitName, readonly [value: number, words: RegExp]>>> = {
  together: [30, /half a minute/],
  easyWalk: [300, /five to ten minutes.*five and five/],
  mainShare: [50, /half of the session/],
  sessionGrowth: [30, /from 30 %/],
  sessionFloor: [300, /five minutes/],
  stretchGrowth: [30, /from 30 %/],
  stretchFloor: [90, /minute and a half/],
  behind: [60, /a minute/],
  targetRise: [1, /a point a week/],
  stepRise: [2, /over two points/],
  hardFrom: [7, /from 7 of 10/],
  lighter: [20, /a fifth less/],
  continuous: [1200, /twenty minutes/],
  nearlyAllRunning: [90, /a tenth or less/],
  eventGrowth: [30, /30 % longer/],
  eventGrowthWalking: [50, /half as long again/],
  runningPace: [480, /8 min per km running/],
  walkingPace: [720, /12 min walking/],
};

describe('where the numbers come from', () => {
  it.each(Object.entries(TOLD))('REV-2 %s is told as it is', (name, [value, words]) => {
    expect(REVIEW_LIMITS[name as LimitName].value).toBe(value);
    const users = WARNING_CODES.filter((code) =>
      (WARNING_LIMITS[code] as readonly string[]).includes(name),
    );
    for (const code of users) expect(sourceOf(code)).toMatch(words);
  });

  it.each(WARNING_CODES)('REV-2 %s says its source and how far it can be leaned on', (code) => {
    const source = sourceOf(code);
    expect(source).toMatch(/^[A-Z].*\.$/);
    expect(source).not.toMatch(/\b(un)?safe|danger|\bmust\b/i);
    const names: readonly LimitName[] = WARNING_LIMITS[code];
    const standings = new Set(names.map((name) => REVIEW_LIMITS[name].standing));
    if (standings.has('contested')) expect(source).toMatch(/contested/);
    if (standings.has('common practice')) expect(source).toMatch(/common practice/);
    if (names.length === 0) expect(source).toMatch(/no number/);
  });

  it('REV-2 every threshold is used, is a number above 0, and has a source or is said to have none', () => {
    const used = new Set<string>(WARNING_CODES.flatMap((code) => [...WARNING_LIMITS[code]]));
    expect(Object.keys(REVIEW_LIMITS).filter((name) => !used.has(name))).toEqual([]);
    for (const { value, from, standing } of Object.values(REVIEW_LIMITS)) {
      expect(value).toBeGreaterThan(0);
      expect(from.length).toBeGreaterThan(10);
      if (standing !== 'common practice') expect(from).toMatch(/\d{4}|Mayo Clinic/);
    }
  });
});
