import fc from 'fast-check';
import { ms } from '../../../src/domain/units.ts';
import type { Edit, StepUp } from '../../../src/domain/workshop/edit.ts';
import { sheetOf } from '../../../src/domain/workshop/file.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { roughText, written } from '../programme/arbitraries.ts';
import { demo } from '../programme/files.ts';

const DEMO = (() => {
  const sheet = sheetOf(JSON.stringify(demo()));
  if (!sheet.ok) throw new Error('the demo is not a programme');
  return sheet.value;
})();

/** The demo as a sheet, changed as a test wishes. */
export const demoSheet = (change: Partial<Sheet> = {}): Sheet => ({ ...DEMO, ...change });

const words = fc.oneof(
  fc.constantFrom('', 'Wren', 'Curlew', 'Sand Martin', 'a\nb', '\u202eturned', 'x'.repeat(500)),
  fc.string({ unit: 'binary', maxLength: 130 }),
);
const number = fc.oneof(
  fc.integer({ min: -2, max: 60 }),
  fc.constantFrom(0.5, 101, 1_000_001, Number.NaN, Number.POSITIVE_INFINITY),
);
/** Mostly places that a sheet of a few weeks has. */
const place = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 0, max: 6 }) },
  { weight: 1, arbitrary: fc.constantFrom(-1, 51, 0.5, Number.NaN) },
);
const group = fc.constantFrom(
  'wren',
  'dunlin',
  'curlew',
  'swift',
  'wren-2',
  'constructor',
  '__proto__',
);
const at = fc.record({ week: place, group, session: fc.integer({ min: -1, max: 7 }) });
const text = fc.oneof(
  written.map((made) => made.text),
  roughText,
  fc.constantFrom('', '5 min walk', `5 min walk${' '.repeat(2000)}`, '6 x (2 min run, 1 min walk)'),
);
const date = fc.constantFrom('', '2027-03-01', '2027-03-03', '2027-02-30', 'soon', '1969-12-30');
const step: fc.Arbitrary<StepUp> = fc.oneof(
  fc.constant({ kind: 'same' as const }),
  fc.record({
    kind: fc.constantFrom('hard' as const, 'easy' as const),
    by: fc.integer({ min: -200, max: 600 }).map((n) => ms(n * 1000)),
  }),
  fc.record({ kind: fc.constant('sets' as const), by: fc.integer({ min: -3, max: 20 }) }),
);

const kind = <K extends Edit['kind']>(name: K): fc.Arbitrary<K> => fc.constant(name);

const replaced: fc.Arbitrary<Edit> = fc
  .constantFrom<Partial<Sheet>>(
    {},
    { groups: [] },
    { weeks: [] },
    { groups: [{ id: 'heron', name: 'Heron', for: '' }] },
    { id: 'another-programme', title: 'A draft' },
    { title: 'x'.repeat(121) },
  )
  .map((change) => ({ kind: 'replace', sheet: demoSheet(change) }));

/** Anything that a screen might ask, sense or nonsense. */
export const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ kind: kind('title'), title: words }),
  fc.record({ kind: kind('leader'), leader: words }),
  fc.record({ kind: kind('goal'), name: words }, { requiredKeys: ['kind'] }),
  fc.record({ kind: kind('goal'), distanceM: number }, { requiredKeys: ['kind'] }),
  fc.record({ kind: kind('goal-date'), date }),
  fc.record({ kind: kind('start-date'), date }),
  fc.record({ kind: kind('reminders'), reminders: fc.array(words, { maxLength: 60 }) }),
  { weight: 4, arbitrary: fc.record({ kind: kind('cell'), at, text }) },
  fc.record({ kind: kind('tidy'), at }),
  fc.record({ kind: kind('pin'), at, pinned: fc.boolean() }),
  { weight: 2, arbitrary: fc.record({ kind: kind('add-session'), week: place, group }) },
  fc.record({ kind: kind('remove-session'), at }),
  {
    weight: 3,
    arbitrary: fc.record(
      {
        kind: kind('fill'),
        from: at,
        along: fc.constantFrom('weeks' as const, 'groups' as const),
        count: fc.integer({ min: 0, max: 8 }),
        step,
      },
      { requiredKeys: ['kind', 'from', 'along', 'step'] },
    ),
  },
  fc.record({ kind: kind('focus'), week: place, focus: words }),
  fc.record({ kind: kind('effort'), week: place, effort: number }),
  fc.record({ kind: kind('times'), week: place, min: number, max: number }),
  fc.record({ kind: kind('together'), week: place, session: number }),
  { weight: 2, arbitrary: fc.record({ kind: kind('add-week'), at: place }) },
  fc.record({ kind: kind('remove-week'), week: place }),
  fc.record({ kind: kind('move-week'), from: place, to: place }),
  { weight: 2, arbitrary: fc.record({ kind: kind('add-group'), name: words, for: words }) },
  fc.record({
    kind: kind('group'),
    id: group,
    change: fc.record({ name: words, for: words }, { requiredKeys: [] }),
  }),
  fc.record({ kind: kind('remove-group'), id: group }),
  fc.record({ kind: kind('move-group'), id: group, to: place }),
  replaced,
);

export const edits = fc.array(edit, { maxLength: 40 });
