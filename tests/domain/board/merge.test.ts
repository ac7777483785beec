import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  afterForgetting,
  forgottenUntil,
  sameAs,
  withForgotten,
  withoutMarks,
} from '../../../src/domain/board/forget.ts';
import { type Heard, heardKey } from '../../../src/domain/board/heard.ts';
import { mergeAttendance, mergeHeard, mergeSetup } from '../../../src/domain/board/merge.ts';
import { asAttendance, asHeard, asSetup } from '../../../src/domain/board/shapes.ts';
import { heardOf } from '../../../src/domain/board/take.ts';
import {
  DATE,
  days,
  heards,
  PROGRAMME,
  ROSA,
  response,
  SUNDAY,
  setups,
  TAMSIN,
  told,
} from './records.ts';

/** What a later answer of the same person may say. */
const LATER = SUNDAY + 60_000;

function laws<T extends object>(records: fc.Arbitrary<T>, merge: (a: T, b: T) => T): void {
  fc.assert(
    fc.property(records, records, records, (a, b, c) => {
      expect(merge(a, b), 'in either order').toEqual(merge(b, a));
      expect(merge(merge(a, b), c), 'however they are grouped').toEqual(merge(a, merge(b, c)));
      expect(merge(a, a), 'twice').toBe(a);
      const both = merge(a, b);
      expect(merge(both, a), 'what was known already').toBe(both);
      expect(merge(both, b), 'what was known already').toBe(both);
      expect(merge(both, structuredClone(b)), 'the same once more, read anew').toBe(both);
    }),
    { numRuns: 400 },
  );
}

describe('two of one key become one', () => {
  it('IN-1 what is known of a person: commutative, associative, idempotent', () =>
    laws(heards, mergeHeard));
  it('IN-1 a day’s list: commutative, associative, idempotent', () => laws(days, mergeAttendance));
  it('IN-1 what a leader said of a programme’s people: commutative, associative, idempotent', () =>
    laws(setups, mergeSetup));

  it('IN-2 of each session the later telling holds, of oneself the latest, and nothing is lost', () => {
    const first = heardOf(response({ name: 'Rosa', entries: [told('one', 0, { effort: 4 })] }));
    const later = heardOf(
      response({
        sentAt: LATER,
        group: 'dunlin',
        entries: [told('one', 0, { effort: 6 }), told('two', 2)],
      }),
    );
    const both = mergeHeard(later, first);
    expect(both.told).toEqual({ at: LATER, group: 'dunlin', revision: 1, leftOut: 0 });
    expect(
      both.entries.map(({ id, effort, toldAt, group }) => [id, effort, toldAt, group]),
    ).toEqual([
      ['one', 6, LATER, 'dunlin'],
      ['two', undefined, LATER, 'dunlin'],
    ]);
  });

  it('IN-2 an older answer that comes late adds what was missing, and takes nothing back', () => {
    const later = heardOf(response({ sentAt: LATER, entries: [told('two', 2)] }));
    const older = heardOf(response({ entries: [told('one'), told('two', 2, { effort: 9 })] }));
    const both = mergeHeard(later, older);
    expect(both.told?.at).toBe(LATER);
    expect(both.entries.map(({ id, effort }) => [id, effort])).toEqual([
      ['one', undefined],
      ['two', undefined],
    ]);
  });

  it('IN-2 a group that is called what every object has is a group like any other', () => {
    const of = (count: number, at: number) => ({
      format: 'towpath-board/1' as const,
      programmeId: PROGRAMME,
      expected: { constructor: { count, at } },
      forgotten: [],
    });
    expect(mergeSetup(of(3, 1), of(5, 2)).expected).toEqual({ constructor: { count: 5, at: 2 } });
  });
});

const hand = (person: string, same?: string): Heard => ({
  format: 'towpath-heard/1',
  key: heardKey(PROGRAMME, person),
  programmeId: PROGRAMME,
  person,
  known: { at: SUNDAY, name: 'Rosa', ...(same === undefined ? {} : { same }) },
  entries: [],
});

describe('somebody is forgotten', () => {
  it('IN-3 before a merge or after it, what was said up to then is gone and the rest stays', () => {
    const until = SUNDAY + 3_600_000;
    fc.assert(
      fc.property(heards, heards, (a, b) => {
        const [one, other] = [afterForgetting(a, until), afterForgetting(b, until)];
        const before =
          one === undefined || other === undefined ? (one ?? other) : mergeHeard(one, other);
        const after = afterForgetting(mergeHeard(a, b), until);
        expect(after).toEqual(before);
        expect(JSON.stringify(after ?? {})).not.toContain(`"toldAt":${until}`);
      }),
    );
  });

  it('IN-3 with all who are the same person, and the ticks of each', () => {
    const all = [hand('hand.1', ROSA), hand('hand.2'), hand('hand.3', ROSA), heardOf(response())];
    for (const asked of [ROSA, 'hand.1', 'hand.3'])
      expect([...sameAs(all, asked)].sort()).toEqual([ROSA, 'hand.1', 'hand.3'].sort());
    expect(sameAs(all, 'hand.2')).toEqual(['hand.2']);
    const day = {
      format: 'towpath-attendance/1',
      key: `${PROGRAMME} ${DATE}`,
      programmeId: PROGRAMME,
      date: DATE,
      which: { week: 1, session: 2, at: SUNDAY },
      marks: {
        [ROSA]: { present: true, at: SUNDAY },
        'hand.1': { present: false, at: SUNDAY },
        [TAMSIN]: { present: true, at: SUNDAY },
      },
    } as const;
    const gone = new Map([ROSA, 'hand.1'].map((person) => [person, SUNDAY]));
    expect(Object.keys(withoutMarks(day, gone).marks)).toEqual([TAMSIN]);
    expect(withoutMarks(day, new Map([[ROSA, SUNDAY - 1]]))).toBe(day);
  });

  it('IN-3 is remembered as a digest and a moment, the latest of them', () => {
    const digest = 'A'.repeat(43);
    const once = withForgotten(undefined, PROGRAMME, [{ digest, at: SUNDAY }]);
    const twice = withForgotten(once, PROGRAMME, [{ digest, at: LATER }]);
    expect(forgottenUntil(once, digest)).toBe(SUNDAY);
    expect(forgottenUntil(twice, digest)).toBe(LATER);
    expect(forgottenUntil(twice, 'B'.repeat(43))).toBeUndefined();
    expect(withForgotten(twice, PROGRAMME, [{ digest, at: SUNDAY }])).toBe(twice);
  });
});

type Change = (record: Record<string, unknown>) => unknown;
const long = (count: number) =>
  Array.from({ length: count }, (_, n) => ({ ...told(`s-${n}`), group: 'wren', toldAt: SUNDAY }));
const one = { ...told('one'), group: 'wren', toldAt: SUNDAY };

/** Each is a record that is right but for one thing. */
const WRONG_HEARD: Readonly<Record<string, Change>> = {
  'of a newer format': (heard) => ({ ...heard, format: 'towpath-heard/2' }),
  'under the key of another': (heard) => ({ ...heard, key: heardKey(PROGRAMME, TAMSIN) }),
  'of no programme': (heard) => ({ ...heard, programmeId: '../x', key: `../x ${ROSA}` }),
  'with a person that is no secret': (heard) => ({
    ...heard,
    person: '__proto__',
    key: heardKey(PROGRAMME, '__proto__'),
  }),
  'with a session without a group': (heard) => ({
    ...heard,
    entries: [{ ...told('one'), toldAt: SUNDAY }],
  }),
  'with a session told at no time': (heard) => ({ ...heard, entries: [{ ...one, toldAt: 1e300 }] }),
  'with a session felt as eleven': (heard) => ({ ...heard, entries: [{ ...one, effort: 11 }] }),
  'with a session far from its day': (heard) => ({
    ...heard,
    entries: [{ ...one, localDate: '2026-01-01' }],
  }),
  'with one session twice': (heard) => ({ ...heard, entries: [one, one] }),
  'with more sessions than a board holds': (heard) => ({ ...heard, entries: long(1001) }),
  'with a name that turns the writing round': (heard) => ({
    ...heard,
    known: { at: SUNDAY, name: '\u202easoR' },
  }),
  'with a name as long as a book': (heard) => ({
    ...heard,
    known: { at: SUNDAY, name: 'x'.repeat(61) },
  }),
  'same as somebody who is nobody': (heard) => ({
    ...heard,
    known: { at: SUNDAY, same: 'hand.1' },
  }),
};

describe('records from outside', () => {
  const heard = { ...heardOf(response({ name: 'Rosa' })), known: { at: SUNDAY, name: 'Rosa' } };

  it('IN-4 are read as they were written, sessions in order, and nothing that is not known', () => {
    expect(asHeard(structuredClone(heard))).toEqual(heard);
    expect(asHeard(hand('hand.1', ROSA))).toEqual(hand('hand.1', ROSA));
    const [a, b] = [
      { ...one, id: 'a' },
      { ...one, id: 'b' },
    ];
    expect(asHeard({ ...heard, entries: [b, a], more: 1 })).toEqual({ ...heard, entries: [a, b] });
    fc.assert(
      fc.property(heards, days, setups, (heard, day, setup) => {
        expect(asHeard(structuredClone(heard))).toEqual(heard);
        expect(asAttendance(structuredClone(day))).toEqual(day);
        expect(asSetup(structuredClone(setup))).toEqual(setup);
      }),
    );
  });

  it.each(Object.entries(WRONG_HEARD))('IN-4 a person %s is refused', (_, change) => {
    expect(asHeard(structuredClone(heard))).toBeDefined();
    expect(
      asHeard(change(structuredClone(heard) as unknown as Record<string, unknown>)),
    ).toBeUndefined();
  });

  it('IN-4 a day’s list and a setup out of bounds are refused', () => {
    const mark = { present: true, at: SUNDAY };
    const day = {
      format: 'towpath-attendance/1',
      key: `${PROGRAMME} ${DATE}`,
      programmeId: PROGRAMME,
      date: DATE,
      which: { week: 1, session: 1, at: SUNDAY },
      marks: { [ROSA]: mark },
    };
    expect(asAttendance(day)).toEqual(day);
    for (const wrong of [
      { date: '2027-02-30' },
      { key: 'another' },
      { which: { week: 53, session: 1, at: SUNDAY } },
      { marks: { nobody: mark } },
      { marks: { [ROSA]: { present: 1, at: SUNDAY } } },
      { marks: Object.fromEntries(Array.from({ length: 5001 }, (_, n) => [`hand.${n}`, mark])) },
    ])
      expect(
        asAttendance({ ...day, ...wrong }),
        JSON.stringify(wrong).slice(0, 80),
      ).toBeUndefined();
    const setup = {
      format: 'towpath-board/1',
      programmeId: PROGRAMME,
      expected: {},
      forgotten: [],
    };
    expect(asSetup(setup)).toEqual(setup);
    for (const wrong of [
      { expected: { wren: { count: -1, at: SUNDAY } } },
      { expected: { 'no group': { count: 1, at: SUNDAY } } },
      { keep: { on: 'yes', at: SUNDAY } },
      { forgotten: [{ digest: 'short', at: SUNDAY }] },
    ])
      expect(asSetup({ ...setup, ...wrong }), JSON.stringify(wrong)).toBeUndefined();
    for (const nothing of [undefined, null, 1, 'x', [], { format: 1 }])
      for (const read of [asHeard, asAttendance, asSetup]) expect(read(nothing)).toBeUndefined();
  });
});
