import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { LIMITS } from '../../../src/domain/programme/shape.ts';
import type { Json } from './files.ts';
import { CROSSED, changed, demo, RIGHT, WRONG } from './files.ts';

const path = fileURLToPath(
  new URL('../../../public/towpath-programme.schema.json', import.meta.url),
);
const schema = JSON.parse(readFileSync(path, 'utf8'));
const ajv = new Ajv2020({ strict: true, strictTypes: false, allErrors: false });
addFormats.default(ajv);
const validate = ajv.compile(schema);

const CROSS_CODES = new Set([
  'date-order',
  'group-twice',
  'group-unknown',
  'monday',
  'plan',
  'sessions-missing',
  'times-order',
  'together',
]);

describe('the JSON Schema of a programme', () => {
  it('FILE-10 it is a schema of draft 2020-12 that ajv takes without complaint', () => {
    expect(ajv.validateSchema(schema)).toBe(true);
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  });

  it('FILE-10 it takes the demo, and each way in which the demo may differ', () => {
    expect(validate(demo())).toBe(true);
    for (const [where, value] of RIGHT)
      expect([where, validate(changed(where, value))]).toEqual([where, true]);
  });

  it.each(WRONG)('FILE-10 it refuses %s as %.60j, as the reader does', (where, value) => {
    const file = changed(where, value);
    expect(validate(file)).toBe(false);
    expect(readProgramme(JSON.stringify(file)).ok).toBe(false);
  });

  it.each(CROSSED)(
    'FILE-10 it cannot say that %s as %.60j is wrong; the reader does',
    (where, value) => {
      const file = changed(where, value);
      expect(validate(file)).toBe(true);
      expect(readProgramme(JSON.stringify(file)).ok).toBe(false);
    },
  );

  it('FILE-10 both have the same limits', () => {
    const { properties, $defs } = schema;
    expect(properties.groups.maxItems).toBe(LIMITS.groups);
    expect(properties.weeks.maxItems).toBe(LIMITS.weeks);
    expect(properties.reminders.maxItems).toBe(LIMITS.reminders);
    expect($defs.title.maxLength).toBe(LIMITS.title);
    expect($defs.name.maxLength).toBe(LIMITS.name);
    expect($defs.sentence.maxLength).toBe(LIMITS.sentence);
  });

  /** Every place in the demo, as a list of keys. */
  const places = (at: Json, keys: readonly string[] = []): readonly (readonly string[])[] => {
    const below =
      typeof at === 'object' && at !== null
        ? Object.entries(at).flatMap(([key, value]) => places(value as Json, [...keys, key]))
        : [];
    return keys.length > 0 ? [keys, ...below] : below;
  };
  const all = places(demo());

  const value: fc.Arbitrary<Json | undefined> = fc.oneof(
    fc.constantFrom<Json | undefined>(
      undefined,
      null,
      true,
      0,
      1,
      2,
      7,
      8,
      -1,
      1.5,
      100,
      101,
      '',
      ' ',
      'x',
      'wren',
      '5 min walk',
      '2027-03-01',
      '2027-02-30',
      'a\u202eb',
      'a\nb',
      [],
      {},
      [''],
      ['5 min walk'],
      [[]],
      { wren: '5 min walk' },
    ),
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<Json>,
  );

  it('FILE-10 over hundreds of changed demos, reader and schema refuse the same', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...all), value), { minLength: 1, maxLength: 2 }),
        (changes) => {
          const file = demo();
          for (const [keys, to] of changes) {
            let at: Json | undefined = file;
            for (const key of keys.slice(0, -1))
              at =
                typeof at === 'object' && at !== null
                  ? (at as { [key: string]: Json })[key]
                  : undefined;
            const last = keys.at(-1) ?? '';
            if (typeof at !== 'object' || at === null) continue;
            if (to !== undefined) (at as { [key: string]: Json })[last] = to;
            else if (Array.isArray(at)) at.splice(Number(last), 1);
            else delete at[last];
          }
          const text = JSON.stringify(file);
          const read = readProgramme(text);
          const valid = validate(JSON.parse(text));
          if (read.ok) expect(valid).toBe(true);
          else if (valid)
            expect(read.error.filter(({ code }) => !CROSS_CODES.has(code))).toEqual([]);
        },
      ),
      { numRuns: 500 },
    );
  });
});
