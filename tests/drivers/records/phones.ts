/** Phones as they may be: programmes, sessions and everything else that they keep, made by chance. */
import fc from 'fast-check';
import type { Row, Stores } from '../../../src/domain/exchange/backup.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import { programmeText } from '../exchange/short-programme.ts';
import { PROGRAMME_IDS, someEntry, someFollowing } from './entries.ts';

/** Keys of two leaders. */
export const KEYS = ['A', 'B'].map((letter) => letter.repeat(44));

/** By one of two leaders, signed, or unsigned. What a leader's revision says is one thing. */
const someProgramme: fc.Arbitrary<Row[1]> = fc
  .record({
    id: fc.constantFrom(...PROGRAMME_IDS),
    revision: fc.integer({ min: 1, max: 3 }),
    cameAt: fc.integer({ min: 1, max: 5 }),
    key: fc.constantFrom(undefined, ...KEYS),
  })
  .map(({ id, revision, cameAt, key }) => {
    const leader = { name: 'Imogen', sign: key ?? null, seal: null };
    return {
      id,
      text: programmeText(id, revision, { leader }),
      cameAt,
      ...(key === undefined ? {} : { key, signature: `by ${key}` }),
    };
  });

const byKey = <T>(
  made: fc.Arbitrary<T>,
  keyOf: (value: T) => string,
): fc.Arbitrary<readonly Row[]> =>
  fc
    .uniqueArray(made, { maxLength: 5, selector: keyOf })
    .map((list) =>
      list
        .map((value): Row => [keyOf(value), value])
        .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)),
    );

const someSheet = fc
  .record({
    key: fc.constantFrom('x', 'y'),
    at: fc.integer({ min: 0, max: 3 }),
    title: fc.string(),
  })
  .map(({ key, at, title }) => ({
    format: 'towpath-sheet/1',
    key,
    changedAt: at,
    tab: 't',
    mark: `${at}`,
    sheet: { ...blankSheet('marsh', 'en'), title },
  }));

const somePerson = fc
  .record({
    programmeId: fc.constantFrom(...PROGRAMME_IDS),
    secret: fc.constantFrom('one', 'two'),
    times: fc.uniqueArray(fc.integer({ min: 0, max: 3 }), { maxLength: 3 }),
  })
  .map(({ times, ...rest }) => ({
    format: 'towpath-person/1',
    ...rest,
    told: [...times].sort().map((at) => ({ at, ids: ['a'] })),
  }));

/** A phone as it may be: no two of its records under one key. */
export const phone: fc.Arbitrary<Stores> = fc.record({
  programmes: byKey(someProgramme, (value) => (value as { id: string }).id),
  log: byKey(someEntry, ({ id }) => id),
  following: byKey(someFollowing, ({ programmeId }) => programmeId),
  people: byKey(somePerson, ({ programmeId }) => programmeId),
  sheets: byKey(someSheet, ({ key }) => key),
  sent: fc.constant([]),
  choices: byKey(
    fc.tuple(fc.constantFrom(...PROGRAMME_IDS), fc.constantFrom('wren', 'dunlin')),
    ([id]) => id,
  ).map((rows) => rows.map(([key, value]): Row => [key, (value as readonly string[])[1]])),
  settings: fc
    .record({ talk: fc.constantFrom('few', 'many'), cautionsReadOn: fc.constant('2027-03-01') })
    .map((settings): readonly Row[] => [['settings', settings]]),
});
