import { describe, expect, it } from 'vitest';
import type { Row } from '../../../src/domain/exchange/backup.ts';
import type { PersonRecord } from '../../../src/domain/exchange/backup-shapes.ts';
import {
  canonical,
  compareStamps,
  laterText,
  mergeFields,
} from '../../../src/domain/exchange/merge-fields.ts';
import { mergeProgrammes } from '../../../src/domain/exchange/merge-programmes.ts';
import {
  mergeFollowing,
  mergePauses,
  mergePeople,
  newerOf,
} from '../../../src/domain/exchange/merge-records.ts';
import { restore } from '../../../src/domain/exchange/restore.ts';
import { sideOf } from '../../../src/domain/exchange/restore-side.ts';
import type { Decision, Following, Pause } from '../../../src/domain/log/following.ts';
import { programmeText } from '../../drivers/exchange/short-programme.ts';
import { entry } from '../../drivers/records/entries.ts';

const ID = 'heron-loop-spring';
const [KEY, OTHER, THIRD] = ['A', 'B', 'C'].map((letter) => letter.repeat(44)) as [
  string,
  string,
  string,
];

const textOf = (revision: number, sign: string | null = null, title = 'The marsh'): string =>
  programmeText(ID, revision, { title, leader: { name: 'Imogen', sign, seal: null } });

const row = (text: string, more: object = {}, id = ID): Row => [
  id,
  { id, text, cameAt: 5, ...more },
];
const by = (key: string, revision: number, more: object = {}, title?: string): Row =>
  row(textOf(revision, key, title), { key, signature: `by ${key}`, ...more });
const merged = (here: readonly Row[], given: readonly Row[], vouched = {}) => {
  const { rows, ids, notTaken } = mergeProgrammes(here, given, vouched);
  return { rows: [...rows], ids: Object.fromEntries(ids), notTaken };
};

describe('a programme that a backup holds', () => {
  it('REC-12 is told of by what is wrong with it', () => {
    const cases: readonly (readonly [string, Row])[] = [
      ['shape', [ID, { id: ID, text: textOf(1) }]],
      ['shape', ['another', { id: ID, text: textOf(1), cameAt: 1 }]],
      ['shape', ['another', { id: 'another', text: textOf(1), cameAt: 1 }]],
      ['shape', [`${ID}.2`, { id: ID, text: textOf(1), cameAt: 1 }]],
      ['programme', row('Dear Imogen')],
      ['newer', row(textOf(1).replace('programme/1', 'programme/2'))],
      ['signature', row(textOf(1, KEY), { key: OTHER })],
    ];
    for (const [why, given] of cases)
      expect(merged([], [given])).toEqual({
        rows: [],
        ids: {},
        notTaken: [{ key: given[0], why }],
      });
  });

  it('REC-12 under a number of its own it is that programme still', () => {
    const id = `${ID}.2`;
    const { rows, ids } = merged([], [row(textOf(1), {}, id)]);
    expect(rows).toEqual([row(textOf(1), {}, id)]);
    expect(ids).toEqual({ [id]: id });
  });

  it('REC-12 of one text twice the signed copy stays, and the day when it first came', () => {
    const text = textOf(1, KEY);
    const signed = { key: KEY, signature: 's' };
    const both = row(text, { ...signed, cameAt: 3 });
    const [bare, full] = [row(text, { cameAt: 3 }), row(text, { ...signed, cameAt: 7 })];
    expect(merged([bare], [full]).rows).toEqual([both]);
    expect(merged([full], [bare]).rows).toEqual([both]);
    expect(merged([bare], [row(text, { cameAt: 9 })]).rows).toEqual([bare]);
    expect(merged([full], [row(text, { ...signed, signature: 'other', cameAt: 9 })]).rows).toEqual([
      full,
    ]);
  });

  it('REC-12 by one leader the later revision stays; of one revision what came later, then by text', () => {
    const stays = (a: Row, b: Row) => {
      const [there, here] = [merged([a], [b]), merged([b], [a])];
      expect(there.rows).toEqual(here.rows);
      const [[, stored] = []] = there.rows;
      return (stored as { text: string }).text;
    };
    expect(stays(by(KEY, 1, { cameAt: 9 }), by(KEY, 2, { cameAt: 1 }))).toBe(textOf(2, KEY));
    expect(stays(by(KEY, 2, { cameAt: 9 }, 'Dunes'), by(KEY, 2, { cameAt: 1 }, 'Sands'))).toBe(
      textOf(2, KEY, 'Dunes'),
    );
    expect(stays(by(KEY, 2, {}, 'Dunes'), by(KEY, 2, {}, 'Sands'))).toBe(textOf(2, KEY, 'Sands'));
  });

  it('REC-12 what is known here of replaced keys stays, its own key never among them', () => {
    const here = by(KEY, 1, { retired: [THIRD] });
    expect(merged([here], [by(KEY, 2)]).rows).toEqual([by(KEY, 2, { retired: [THIRD] })]);
    const { rows } = merged([here], [by(OTHER, 2)], { [ID]: [KEY, OTHER] });
    expect(rows).toEqual([by(OTHER, 2, { retired: [KEY, THIRD].sort() })]);
  });

  it('REC-12 the key of the signed copy is not among those replaced, whatever the other says', () => {
    const bare = row(textOf(1, KEY), { retired: [KEY, THIRD] });
    expect(merged([bare], [by(KEY, 1)]).rows).toEqual([by(KEY, 1, { retired: [THIRD] })]);
  });

  it('REC-12 of two revisions in one backup the later stays, whichever is read first', () => {
    const second: Row = [`${ID}.2`, { ...(by(KEY, 2)[1] as object), id: `${ID}.2` }];
    for (const given of [
      [by(KEY, 3), second],
      [second, by(KEY, 3)],
    ]) {
      const { rows, ids } = merged([by(KEY, 1)], given);
      expect(rows).toEqual([by(KEY, 3)]);
      expect(ids).toEqual({ [ID]: ID, [`${ID}.2`]: ID });
    }
  });

  it('REC-12 new here, what is vouched for of its keys is kept with it', () => {
    expect(merged([], [by(OTHER, 2)], { [ID]: [KEY] }).rows).toEqual([
      by(OTHER, 2, { retired: [KEY] }),
    ]);
    expect(merged([], [by(OTHER, 2, { retired: [KEY] })]).rows).toEqual([by(OTHER, 2)]);
  });

  it('REC-12 a replaced key is refused, and its log goes to the programme that is here', () => {
    const here = by(OTHER, 2, { retired: [KEY] });
    expect(merged([here], [by(KEY, 5)])).toEqual({
      rows: [here],
      ids: { [ID]: ID },
      notTaken: [{ key: ID, why: 'retired' }],
    });
  });

  it('REC-12 also when that programme is here under a number', () => {
    const id = `${ID}.2`;
    const here: Row = [id, { ...(by(OTHER, 2, { retired: [KEY] })[1] as object), id }];
    expect(merged([here], [by(KEY, 5)])).toEqual({
      rows: [here],
      ids: { [ID]: id },
      notTaken: [{ key: ID, why: 'retired' }],
    });
  });

  it('REC-12 beside what cannot be read here it is kept under the first number that is free', () => {
    const odd = (id: string): Row => [id, { id, format: 'of a later day' }];
    const here = [odd(ID), odd(`${ID}.2`)];
    expect(merged(here, [by(KEY, 1)]).ids).toEqual({ [ID]: `${ID}.3` });
  });

  it('REC-12 beside what cannot be read here it is kept under a number', () => {
    const here: Row = [ID, { id: ID, format: 'of a later day' }];
    const { rows, ids } = merged([here], [by(KEY, 1)]);
    expect(rows).toEqual([
      here,
      row(textOf(1, KEY), { key: KEY, signature: `by ${KEY}` }, `${ID}.2`),
    ]);
    expect(ids).toEqual({ [ID]: `${ID}.2` });
  });
});

const pause = (from: number, to?: number, why: Pause['why'] = 'other'): Pause => ({
  from: `2027-03-${String(from).padStart(2, '0')}`,
  ...(to === undefined ? {} : { to: `2027-03-${String(to).padStart(2, '0')}` }),
  why,
});

describe('pauses from two phones', () => {
  it('REC-10 of two that overlap the gentler way back holds: after illness, then a holiday', () => {
    const order: readonly Pause['why'][] = ['other', 'holiday', 'illness'];
    for (const [n, a] of order.entries())
      for (const [m, b] of order.entries()) {
        const why = order[Math.max(n, m)] ?? 'other';
        expect(mergePauses([pause(2, 6, a)], [pause(4, 9, b)])).toEqual([pause(2, 9, why)]);
        expect(mergePauses([pause(2, undefined, a)], [pause(2, undefined, b)])).toEqual([
          pause(2, undefined, why),
        ]);
      }
  });

  it('REC-10 they overlap from the day that both have; a day later they are two', () => {
    expect(mergePauses([pause(2, 6)], [pause(6, 9)])).toEqual([pause(2, 9)]);
    expect(mergePauses([pause(2, 6)], [pause(7, 9)])).toEqual([pause(2, 6), pause(7, 9)]);
    expect(mergePauses([pause(2, 9)], [pause(4, 6)])).toEqual([pause(2, 9)]);
    expect(mergePauses([pause(7, 9), pause(2, 3)], [pause(12, 14)])).toEqual([
      pause(2, 3),
      pause(7, 9),
      pause(12, 14),
    ]);
  });

  it('REC-10 an open one ends on the day before the next begins', () => {
    expect(mergePauses([pause(2)], [pause(8, 9)])).toEqual([pause(2, 7), pause(8, 9)]);
    expect(mergePauses([pause(2)], [pause(8)])).toEqual([pause(2, 7), pause(8)]);
  });

  it('REC-10 an open one that begins in one that has ended is over with it, to its last day', () => {
    expect(mergePauses([pause(6)], [pause(2, 6)])).toEqual([pause(2, 6)]);
    expect(mergePauses([pause(2)], [pause(2, 6)])).toEqual([pause(2, 6)]);
    expect(mergePauses([pause(7)], [pause(2, 6)])).toEqual([pause(2, 6), pause(7)]);
  });
});

const decided = (on: number, week: number, why: Decision['why'] = 'go-on'): Decision => ({
  on: `2027-03-${String(on).padStart(2, '0')}`,
  week,
  group: 'wren',
  why,
});
const following = (decisions: readonly Decision[], more: Partial<Following> = {}): Following => ({
  format: 'towpath-following/1',
  programmeId: ID,
  pauses: [],
  decisions,
  ...more,
});

describe('decisions from two phones', () => {
  const both = (a: readonly Decision[], b: readonly Decision[], order: number) =>
    mergeFollowing(following(a), following(b), order).decisions;

  it('REC-10 stand in order of their days, each once', () => {
    const [one, two, three] = [decided(1, 1), decided(8, 2), decided(15, 3)];
    expect(both([two], [three, one], 0)).toEqual([one, two, three]);
    expect(both([one, two], [two, three], 0)).toEqual([one, two, three]);
  });

  it('REC-10 of one day the list that has all of the other’s has the last word', () => {
    const [first, then] = [decided(8, 2), decided(8, 3, 'chosen')];
    for (const order of [-1, 0, 1]) {
      expect(both([first, then], [first], order)).toEqual([first, then]);
      expect(both([then], [then, first], order)).toEqual([then, first]);
    }
  });

  it('REC-10 else the phone on which more was done since has it, and without one both agree', () => {
    const [mine, yours] = [decided(8, 2), decided(8, 3)];
    expect(both([mine], [yours], 1)).toEqual([yours, mine]);
    expect(both([mine], [yours], -1)).toEqual([mine, yours]);
    expect(both([yours], [mine], -1)).toEqual([yours, mine]);
    expect(both([mine], [yours], 0)).toEqual(both([yours], [mine], 0));
  });
});

describe('who somebody is to a leader, from two phones', () => {
  const person = (secret: string, told: PersonRecord['told'], more = {}): PersonRecord => ({
    format: 'towpath-person/1',
    programmeId: ID,
    secret,
    told,
    ...more,
  });

  it('REC-19 the secret that the leader has known longest stays, and all that was told, by its time', () => {
    const old = person('old', [
      { at: 30, ids: ['c'] },
      { at: 10, ids: ['a'] },
    ]);
    const young = person('young', [
      { at: 20, ids: ['b'] },
      { at: 30, ids: ['c'] },
    ]);
    const known = person('old', [
      { at: 10, ids: ['a'] },
      { at: 20, ids: ['b'] },
      { at: 30, ids: ['c'] },
    ]);
    expect(mergePeople(old, young)).toEqual(known);
    expect(mergePeople(young, old)).toEqual(known);
  });

  it('REC-19 one that was told nothing gives way to one that was', () => {
    const [silent, told] = [person('a', []), person('b', [{ at: 1, ids: [] }])];
    expect(mergePeople(silent, told).secret).toBe('b');
    expect(mergePeople(told, silent).secret).toBe('b');
    const quiet = [person('a', []), person('b', [])] as const;
    expect(mergePeople(...quiet).secret).toBe('b');
    expect(mergePeople(quiet[1], quiet[0]).secret).toBe('b');
  });

  it('REC-19 told at one moment, both stand in an order that both phones find', () => {
    const [a, b] = [person('s', [{ at: 5, ids: ['a'] }]), person('s', [{ at: 5, ids: ['b'] }])];
    expect(mergePeople(a, b).told).toEqual([
      { at: 5, ids: ['a'] },
      { at: 5, ids: ['b'] },
    ]);
    expect(mergePeople(b, a)).toEqual(mergePeople(a, b));
  });

  it('REC-19 under 16 is said once and stays said; unsaid it is not there', () => {
    const [young, other] = [
      person('s', [], { under16: true }),
      person('s', [], { under16: false }),
    ];
    expect(mergePeople(young, other).under16).toBe(true);
    expect(mergePeople(other, young).under16).toBe(true);
    // Whoever is known longer decides the rest, and not this.
    const first = [{ at: 1, ids: ['a'] }];
    const then = [{ at: 2, ids: ['b'] }];
    const [old, late] = [
      person('s', first, { under16: false }),
      person('t', then, { under16: true }),
    ];
    expect(mergePeople(old, late)).toMatchObject({ secret: 's', under16: true });
    expect(mergePeople(late, old)).toMatchObject({ secret: 's', under16: true });
    expect(mergePeople(person('s', []), person('s', []))).not.toHaveProperty('under16');
  });
});

describe('the newer of two', () => {
  const at = (moment: number, words: string) => ({ moment, words });
  const newer = (a: ReturnType<typeof at>, b: typeof a) => newerOf(a, b, ({ moment }) => [moment]);

  it('REC-8 is by its moment, else by its text, whichever is asked first', () => {
    expect(newer(at(1, 'z'), at(2, 'a'))).toEqual(at(2, 'a'));
    expect(newer(at(2, 'a'), at(1, 'z'))).toEqual(at(2, 'a'));
    // By their texts 9 would come after 10.
    expect(newer(at(9, 'a'), at(10, 'a'))).toEqual(at(10, 'a'));
    expect(newer(at(10, 'a'), at(9, 'a'))).toEqual(at(10, 'a'));
    expect(newer(at(1, 'a'), at(1, 'b'))).toEqual(at(1, 'b'));
    expect(newer(at(1, 'b'), at(1, 'a'))).toEqual(at(1, 'b'));
    const same = [at(1, 'a'), at(1, 'a')] as const;
    expect(newer(...same)).toBe(same[0]);
  });

  it('REC-8 stamps are compared place by place, numbers and texts', () => {
    expect(compareStamps([1, 2], [1, 2])).toBe(0);
    expect(compareStamps([2, 1], [1, 9])).toBe(1);
    expect(compareStamps([1, 1], [1, 9])).toBe(-1);
    expect(compareStamps(['2027-03-09', 0], ['2027-03-08', 7])).toBe(1);
    expect(compareStamps([], [])).toBe(0);
  });

  it('REC-8 field by field the newer side’s, and what only one of them has', () => {
    const [a, b] = [
      { x: 1, only: 'a' },
      { x: 2, also: undefined },
    ];
    expect(mergeFields<object>(a, b, 1)).toEqual({ x: 1, only: 'a' });
    expect(mergeFields<object>(a, b, -1)).toEqual({ x: 2, only: 'a' });
    expect(mergeFields<object>(a, b, 0)).toEqual({ x: 2, only: 'a' });
    expect(Object.keys(mergeFields<object>(a, b, 0))).not.toContain('also');
    expect(laterText('a', 'b')).toBe('b');
  });

  it('REC-8 two values are the same whatever the order of their keys, and not otherwise', () => {
    expect(canonical({ b: [1, { d: null, c: 'x' }], a: true, e: undefined })).toBe(
      '{"a":true,"b":[1,{"c":"x","d":null}]}',
    );
    expect(canonical({ a: 1, b: 2, c: 3 })).toBe('{"a":1,"b":2,"c":3}');
    expect(canonical([undefined, null])).toBe('[null,null]');
    expect(canonical({ a: 1 })).not.toBe(canonical({ a: '1' }));
  });
});

describe('the phone on which more was done since', () => {
  const side = (log: readonly Row[], following: readonly Row[] = []) =>
    sideOf({ log, following })(ID);
  const run = (id: string, localDate: string): Row => [id, entry({ id, localDate })];

  it('REC-10 is told by the latest day of a session, a decision or a pause, then by how much there is', () => {
    expect(side([])).toEqual(['', 0]);
    expect(side([run('a', '2027-03-09'), run('b', '2027-03-07')])).toEqual(['2027-03-09', 2]);
    expect(side([run('a', '2027-03-09')], [[ID, following([decided(10, 2)])]])).toEqual([
      '2027-03-10',
      2,
    ]);
    const paused = following([], { pauses: [pause(2, 4), pause(11)] });
    expect(side([run('a', '2027-03-09')], [[ID, paused]])).toEqual(['2027-03-11', 1]);
    expect(side([], [[ID, following([], { pauses: [pause(2, 14)] })]])).toEqual(['2027-03-14', 0]);
  });

  it('REC-13 what is no record of it counts for nothing', () => {
    expect(side([['a', { id: 'a' }]], [[ID, 'yes']])).toEqual(['', 0]);
    expect(sideOf({})(ID)).toEqual(['', 0]);
  });
});

describe('what a restore tells', () => {
  it('REC-13 a record of a later version from one that is no record, by its format alone', () => {
    const told = (format: unknown) =>
      restore({}, { log: [['x', { format }]] }).notTaken.map(({ why }) => why);
    expect(told('towpath-log/3')).toEqual(['newer']);
    expect(told('towpath-log/12')).toEqual(['newer']);
    for (const other of ['towpath-log/2', 'towpath-log/3x', 'my towpath-log/3', 'towpath-log/', 3])
      expect([other, told(other)]).toEqual([other, ['shape']]);
    expect(restore({}, { log: [['x', 'towpath-log/3']] }).notTaken[0]?.why).toBe('shape');
  });

  it('REC-9 counts what is new and what has more in it, store by store', () => {
    const here = { log: [['a', entry({ id: 'a' })] as Row, ['b', entry({ id: 'b' })] as Row] };
    const mended = entry({ id: 'b', distanceM: 3000, editedAt: 9 });
    const file = { log: [['b', mended] as Row, ['c', entry({ id: 'c' })] as Row] };
    const { report, changes } = restore(here, file);
    expect(report.find(({ store }) => store === 'log')).toEqual({
      store: 'log',
      here: 2,
      inFile: 2,
      added: 1,
      changed: 1,
    });
    expect(changes.map(({ store, key }) => [store, key])).toEqual([
      ['log', 'b'],
      ['log', 'c'],
    ]);
    expect(report.find(({ store }) => store === 'sheets')).toMatchObject({ added: 0, changed: 0 });
  });

  it('REC-11 settings are one record, groups are texts, and anything else is told', () => {
    const { stores, notTaken } = restore(
      {},
      {
        settings: [
          ['other', {}],
          ['settings', [1]],
        ],
        choices: [
          [ID, 7],
          ['another', 'wren'],
        ],
      },
    );
    expect(stores).toEqual({ choices: [['another', 'wren']] });
    expect(notTaken).toEqual([
      { store: 'choices', key: ID, why: 'shape' },
      { store: 'settings', key: 'other', why: 'shape' },
      { store: 'settings', key: 'settings', why: 'shape' },
    ]);
  });
});
