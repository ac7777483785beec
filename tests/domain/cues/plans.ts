import fc from 'fast-check';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import {
  ACTIVITIES,
  type Activity,
  type Item,
  type Plan,
  type Repeat,
  type Step,
} from '../../../src/domain/programme/plan.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import type { Timeline } from '../../../src/domain/timeline/timeline.ts';
import { ms } from '../../../src/domain/units.ts';

export const step = (seconds: number, activity: Activity, more: Partial<Step> = {}): Step => ({
  kind: 'step',
  duration: ms(seconds * 1000),
  activity,
  ...more,
});

export const repeat = (count: number, ...items: Item[]): Repeat => ({
  kind: 'repeat',
  count,
  items,
});

/** A session that is only a main part. */
export const mainOnly = (...items: Item[]): Plan => ({
  'warm-up': [],
  main: items,
  'cool-down': [],
});

/** The timeline of a session in shorthand. */
export function timelineOf(text: string): Timeline {
  const plan = parsePlan(text);
  if (!plan.ok) throw new Error(`${text}: ${plan.error.code}`);
  return layOut(plan.value);
}

/** Two hours and a half: the longest session. */
const LONGEST = 9000;

export const secondsOfItems = (items: readonly Item[]): number =>
  items.reduce(
    (sum, item) =>
      sum + (item.kind === 'step' ? item.duration / 1000 : item.count * secondsOfItems(item.items)),
    0,
  );

const seconds = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 5, max: 15 }) },
  { weight: 3, arbitrary: fc.integer({ min: 16, max: 70 }) },
  { weight: 3, arbitrary: fc.integer({ min: 71, max: 400 }) },
  { weight: 1, arbitrary: fc.integer({ min: 401, max: 1500 }) },
  { weight: 1, arbitrary: fc.integer({ min: 1501, max: 7200 }) },
);

export const anyStep: fc.Arbitrary<Step> = fc
  .record(
    {
      seconds,
      activity: fc.constantFrom(...ACTIVITIES),
      effort: fc.option(fc.integer({ min: 0, max: 100 }), { nil: undefined, freq: 5 }),
      note: fc.option(fc.constantFrom('over the footbridge', 'quiet feet'), {
        nil: undefined,
        freq: 8,
      }),
    },
    { requiredKeys: ['seconds', 'activity', 'effort', 'note'] },
  )
  .map(({ seconds: s, activity, effort, note }) =>
    step(s, activity, {
      ...(effort === undefined ? {} : { effort }),
      ...(note === undefined ? {} : { note }),
    }),
  );

const repeatOf = (inside: fc.Arbitrary<Item>): fc.Arbitrary<Repeat> =>
  fc
    .tuple(
      fc.oneof(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 50 })),
      fc.array(inside, { minLength: 1, maxLength: 3 }),
    )
    .map(([count, items]) => repeat(count, ...items));

export const anyItem: fc.Arbitrary<Item> = fc.oneof(
  { weight: 3, arbitrary: anyStep },
  { weight: 3, arbitrary: repeatOf(anyStep) },
  { weight: 1, arbitrary: repeatOf(fc.oneof(anyStep, repeatOf(anyStep))) },
);

/** Any plan within the bounds of the shorthand: the items that are too long are left out. */
export const anyPlan: fc.Arbitrary<Plan> = fc
  .record({
    'warm-up': fc.array(anyStep, { maxLength: 2 }),
    main: fc.array(anyItem, { minLength: 1, maxLength: 4 }),
    'cool-down': fc.array(anyStep, { maxLength: 2 }),
    spare: anyStep,
  })
  .map(({ spare, ...parts }) => {
    let left = LONGEST - secondsOfItems([spare]);
    const fitting = (items: readonly Item[]): Item[] =>
      items.filter((item) => {
        const length = secondsOfItems([item]);
        if (length > left) return false;
        left -= length;
        return true;
      });
    const main = fitting(parts.main);
    return {
      'warm-up': fitting(parts['warm-up']),
      main: main.length === 0 ? [spare] : main,
      'cool-down': fitting(parts['cool-down']),
    };
  });
