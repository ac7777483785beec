import fc from 'fast-check';
import { formatPlan } from '../../../src/domain/programme/format.ts';
import type { Item, Plan, Step } from '../../../src/domain/programme/plan.ts';
import { ACTIVITIES } from '../../../src/domain/programme/plan.ts';
import { planLength } from '../../../src/domain/programme/totals.ts';
import { firstForbidden } from '../../../src/domain/programme/unseen.ts';
import { ms } from '../../../src/domain/units.ts';

const seconds = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: 5, max: 120 }) },
  { weight: 2, arbitrary: fc.integer({ min: 1, max: 10 }).map((n) => n * 60) },
  { weight: 1, arbitrary: fc.integer({ min: 5, max: 9000 }) },
);

/** What a note can hold: no quote that ends it, nothing unseen, no blanks around it. */
const note = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 60 })
  .map((text) => text.trim())
  .filter((text) => text.length > 0 && [...text].length <= 80)
  .filter((text) => firstForbidden(text, { lines: false }) === undefined)
  .filter((text) => !/["\u201c-\u201f\u2033\u2036\u00ab\u00bb\u02ba\u301d\u301e\uff02]/.test(text))
  .filter((text) => !/^[\u00ad\u200b-\u200d\u2060\ufeff]|[\u2028\u2029]/.test(text));

export const step: fc.Arbitrary<Step> = fc
  .record(
    {
      kind: fc.constant('step' as const),
      duration: seconds.map((n) => ms(n * 1000)),
      activity: fc.constantFrom(...ACTIVITIES),
      effort: fc.integer({ min: 0, max: 100 }),
      note,
    },
    { requiredKeys: ['kind', 'duration', 'activity'] },
  )
  .map((made) => made as Step);

const repeatOf = (item: fc.Arbitrary<Item>): fc.Arbitrary<Item> =>
  fc.record({
    kind: fc.constant('repeat' as const),
    count: fc.oneof(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 50 })),
    items: fc.array(item, { minLength: 1, maxLength: 4 }),
  });

const sets = repeatOf(step);
const item: fc.Arbitrary<Item> = fc.oneof(
  { weight: 3, arbitrary: step },
  { weight: 2, arbitrary: sets },
  { weight: 1, arbitrary: repeatOf(fc.oneof(step, sets)) },
);

/** Plans within the bounds, whatever their parts. Some need labels to be said, some do not. */
export const plan: fc.Arbitrary<Plan> = fc
  .record({
    'warm-up': fc.array(item, { maxLength: 3 }),
    main: fc.array(item, { minLength: 1, maxLength: 6 }),
    'cool-down': fc.array(item, { maxLength: 3 }),
  })
  .filter((made) => planLength(made) <= 9_000_000 && [...formatPlan(made)].length <= 2000);

const WORDS = [
  ...ACTIVITIES,
  '5 min',
  '90 s',
  '2:30',
  '2\'30"',
  '30"',
  '1 h',
  '5',
  '0',
  '51',
  '400 m',
  '1,5 min',
  '5-10 min',
  'warm-up:',
  'main:',
  'cool-down:',
  '6 x',
  '2 sets of',
  '(',
  ')',
  ';',
  ',',
  '+',
  '/',
  'and',
  'then',
  '\n',
  '@ 70%',
  '@ 7/10',
  '@ hard',
  '@',
  '"Tall"',
  '"',
  'x 6',
  ' ',
  '  ',
  '–',
  '×',
  'hop',
  '.',
  '½',
];

/** Pieces of shorthand in any order: nearly right more often than noise is. */
export const roughText: fc.Arbitrary<string> = fc
  .array(fc.constantFrom(...WORDS), { maxLength: 25 })
  .chain((words) => fc.constantFrom(words.join(' '), words.join('')));

const durations = (length: number): readonly string[] => {
  const [m, s] = [Math.floor(length / 60), length % 60];
  const two = String(s).padStart(2, '0');
  const all = [`${length} s`, `${length}"`, `${length} sec`, `${m}:${two}`];
  if (s === 0) all.push(`${m} min`, `${m}'`, `${m} minutes`, `${m}min`);
  if (m > 0 && s > 0) all.push(`${m} min ${s} s`, `${m}'${s}"`, `${m} min and ${s} s`);
  return all;
};

/** A text with what its writer meant by it, in seconds. */
export interface Written {
  readonly text: string;
  readonly seconds: number;
  readonly runSeconds: number;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

const writtenStep: fc.Arbitrary<Written> = fc
  .tuple(fc.integer({ min: 5, max: 200 }), fc.constantFrom(...ACTIVITIES), fc.nat(), fc.nat(3))
  .map(([seconds, activity, pick, order]) => {
    const all = durations(seconds);
    const duration = all[pick % all.length] ?? '';
    const text = [
      `${activity} ${duration}`,
      `${activity.toUpperCase()} for ${duration}`,
      `${duration} ${activity}`,
      `${duration} of ${activity}`,
    ][order];
    return { text: text ?? '', seconds, runSeconds: /jog|run/.test(activity) ? seconds : 0 };
  });

const writtenRepeat: fc.Arbitrary<Written> = fc
  .tuple(
    fc.integer({ min: 1, max: 6 }),
    fc.array(writtenStep, { minLength: 1, maxLength: 3 }),
    fc.constantFrom(', ', ' / ', ' and ', '; ', '\n'),
    fc.nat(2),
  )
  .map(([count, steps, between, order]) => {
    const inside = steps.map(({ text }) => text).join(between);
    const text = [
      `${count} x (${inside})`,
      `(${inside}) × ${count}`,
      `${count} sets of (${inside})`,
    ];
    return {
      text: text[order] ?? '',
      seconds: count * sum(steps.map(({ seconds }) => seconds)),
      runSeconds: count * sum(steps.map(({ runSeconds }) => runSeconds)),
    };
  });

const separator = fc.constantFrom('; ', ', ', ' + ', ' then ', '\n', ';\n', ', then ');

/** Sessions spelled in any of the ways that are allowed. */
export const written: fc.Arbitrary<Written> = fc
  .array(fc.tuple(fc.oneof(writtenStep, writtenRepeat), separator), { minLength: 1, maxLength: 6 })
  .map((items) => ({
    text: items.map(([{ text }, between], n) => `${n > 0 ? between : ''}${text}`).join(''),
    seconds: sum(items.map(([{ seconds }]) => seconds)),
    runSeconds: sum(items.map(([{ runSeconds }]) => runSeconds)),
  }))
  .filter(({ seconds }) => seconds <= 9000);
