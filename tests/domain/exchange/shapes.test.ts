import { describe, expect, it } from 'vitest';
import {
  asEntry,
  asFollowing,
  asPerson,
  asProgramme,
  asSent,
  asSheet,
} from '../../../src/domain/exchange/backup-shapes.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import { entry } from '../../drivers/records/entries.ts';

type Json = Readonly<Record<string, unknown>>;
const SECOND_DAY_OF_MARCH = '2027-03-02';
const LONG = 'x'.repeat(20_001);

const FOLLOWING: Json = {
  format: 'towpath-following/1',
  programmeId: 'marsh',
  startedOn: '2027-03-01',
  pauses: [{ from: '2027-03-01', to: SECOND_DAY_OF_MARCH, why: 'holiday' }],
  decisions: [{ on: SECOND_DAY_OF_MARCH, week: 2, group: 'wren', why: 'go-on' }],
};
const PERSON: Json = {
  format: 'towpath-person/1',
  programmeId: 'marsh',
  secret: 'abc',
  name: 'Rosa',
  told: [{ at: 5, ids: ['a'] }],
  under16: true,
};
const CELL: Json = { text: '9 min walk', good: '9 min walk', pinned: true };
const WEEK: Json = {
  focus: '',
  effort: 50,
  timesPerWeek: { min: 2, max: 3 },
  sessions: { wren: [CELL] },
  together: 1,
};
const WRITTEN: Json = {
  ...blankSheet('marsh', 'en'),
  groups: [{ id: 'wren', name: 'Wren', for: '' }],
  weeks: [WEEK],
  reminders: ['Tall'],
  kept: {},
};
const SHEET: Json = {
  format: 'towpath-sheet/1',
  key: 'k',
  changedAt: 5,
  tab: 't',
  mark: '1',
  sheet: WRITTEN,
};
const PROGRAMME: Json = {
  id: 'marsh',
  text: '{}',
  cameAt: 5,
  signature: 's',
  key: 'k',
  retired: ['q'],
};
const SENT: Json = { id: 'marsh', revision: 1, text: '{}', signature: '', at: 5 };

const week = (more: Json): Json => ({ sheet: { ...WRITTEN, weeks: [{ ...WEEK, ...more }] } });
const cell = (more: unknown): Json => week({ sessions: { wren: [CELL, more] } });

/** A record that is whole, and what makes it none. */
const WRONG: readonly (readonly [string, (value: unknown) => unknown, Json, readonly Json[]])[] = [
  [
    'a session',
    asEntry,
    entry() as unknown as Json,
    [
      { id: '' },
      { programme: { id: '', revision: 1, title: '' } },
      { group: { id: 'wren' } },
      { week: 0 },
      { week: 1.5 },
      { session: 10_001 },
      { plan: LONG },
      { target: 101 },
      { target: -1 },
      { startedAt: 8.64e15 + 1 },
      { offsetMinutes: 1441 },
      { offsetMinutes: 0.5 },
      { localDate: '2027-02-29' },
      { outcome: 'flown' },
      { doneSeconds: 86_401 },
      { activeSeconds: -1 },
      { covered: [[0, 86_401]] },
      { covered: [[0]] },
      { how: 'by-foot' },
      { distanceM: 1_000_001 },
      { feltAt: '5' },
      { editedAt: Number.NaN },
      { feeling: { effort: 10.1 } },
      { feeling: { effortLater: -0.1 } },
      { feeling: { niggle: { place: 'wing' } } },
      { feeling: { niggle: { place: 'shin', side: 'upper' } } },
      { feeling: { niggle: { place: 'shin', severity: 4 } } },
      { feeling: { soreness: false } },
      { feeling: { warningSign: 'yes' } },
      { feeling: { note: LONG } },
    ],
  ],
  [
    'how a programme is gone through',
    asFollowing,
    FOLLOWING,
    [
      { format: 'towpath-following/2' },
      { programmeId: '' },
      { startedOn: 'Monday' },
      { pauses: [{ from: '2027-02-30', why: 'other' }] },
      { pauses: [{ from: '2027-03-01', to: '', why: 'other' }] },
      { pauses: [{ from: '2027-03-01', why: 'work' }] },
      { decisions: [{ on: '2027-03-02', week: 0, group: 'wren', why: 'go-on' }] },
      { decisions: [{ on: '2027-03-02', week: 1, group: '', why: 'go-on' }] },
      { decisions: [{ on: '2027-03-02', week: 1, group: 'wren', why: 'luck' }] },
      { decisions: undefined },
    ],
  ],
  [
    'who somebody is to a leader',
    asPerson,
    PERSON,
    [
      { format: 'towpath-person/2' },
      { secret: '' },
      { name: 7 },
      { told: [{ at: 'then', ids: [] }] },
      { told: [{ at: 5, ids: [7] }] },
      { under16: 'no' },
    ],
  ],
  [
    'a programme in writing',
    asSheet,
    SHEET,
    [
      { format: 'towpath-sheet/2' },
      { key: '' },
      { changedAt: Number.POSITIVE_INFINITY },
      { tab: 7 },
      { mark: undefined },
      { sheet: { ...WRITTEN, id: '' } },
      { sheet: { ...WRITTEN, goal: { name: '' } } },
      { sheet: { ...WRITTEN, groups: [{ id: '', name: '', for: '' }] } },
      { sheet: { ...WRITTEN, reminders: [7] } },
      { sheet: { ...WRITTEN, kept: null } },
      { sheet: { ...WRITTEN, kept: 'x' } },
      week({ effort: 101 }),
      week({ timesPerWeek: { min: 2 } }),
      week({ sessions: null }),
      week({ sessions: 'wren' }),
      week({ sessions: { wren: [CELL], dunlin: 'x' } }),
      week({ together: 'Sunday' }),
      cell({ text: LONG }),
      cell({ text: '', good: 7 }),
      cell({ text: '', pinned: false }),
    ],
  ],
  [
    'a programme that came',
    asProgramme,
    PROGRAMME,
    [
      { id: '' },
      { text: 'x'.repeat(1_000_001) },
      { cameAt: undefined },
      { signature: '' },
      { key: '' },
      { retired: [7] },
    ],
  ],
  [
    'what was sent',
    asSent,
    SENT,
    [
      { id: '' },
      { revision: 0 },
      { text: 'x'.repeat(1_000_001) },
      { signature: undefined },
      { at: -8.64e15 - 1 },
    ],
  ],
];

describe('records as a backup holds them', () => {
  it.each(WRONG)(
    'REC-13 %s is taken as it is, with what this version does not know',
    (_, as, whole) => {
      expect(as(whole)).toBe(whole);
      const more = { ...whole, tides: 'high' };
      expect(as(more)).toBe(more);
    },
  );

  it.each(WRONG)('REC-13 %s of another shape is none', (_, as, whole, wrong) => {
    for (const part of wrong) expect([part, as({ ...whole, ...part })]).toEqual([part, undefined]);
    for (const none of [undefined, null, [], 'x', 7]) expect(as(none)).toBeUndefined();
  });

  it('REC-13 every way to feel, to stop and to decide that the app knows is taken', () => {
    for (const side of ['left', 'right', 'both'])
      for (const severity of [1, 2, 3])
        expect(
          asEntry({ ...entry(), feeling: { niggle: { place: 'shin', side, severity } } }),
        ).toBeDefined();
    for (const how of ['app', 'there', 'by-hand'])
      for (const outcome of ['finished', 'ended-early'])
        expect(asEntry({ ...entry(), how, outcome })).toBeDefined();
    for (const why of ['holiday', 'illness', 'other'])
      expect(asFollowing({ ...FOLLOWING, pauses: [{ from: '2027-03-01', why }] })).toBeDefined();
    for (const why of ['go-on', 'repeat', 'ease', 'step-up', 're-entry', 'asked', 'chosen'])
      expect(
        asFollowing({
          ...FOLLOWING,
          decisions: [{ on: '2027-03-01', week: 10_000, group: 'wren', why }],
        }),
      ).toBeDefined();
  });

  it('REC-13 what need not be there may be away', () => {
    const { startedOn: _s, ...following } = FOLLOWING;
    const { name: _n, under16: _u, ...person } = PERSON;
    const { signature: _g, key: _k, retired: _r, ...programme } = PROGRAMME;
    const { kept: _p, ...written } = WRITTEN;
    const { together: _t, ...bare } = WEEK;
    const sheet = { ...SHEET, sheet: { ...written, weeks: [{ ...bare, sessions: {} }] } };
    expect(asFollowing(following)).toBe(following);
    expect(asPerson(person)).toBe(person);
    expect(asProgramme(programme)).toBe(programme);
    expect(asSheet(sheet)).toBe(sheet);
    expect(asEntry({ ...entry(), feeling: {} })).toBeDefined();
  });

  it('REC-13 a session of the format before is taken in today’s shape', () => {
    const { how: _, ...old } = entry();
    expect(asEntry({ ...old, format: 'towpath-log/1' })).toEqual({ ...entry(), how: 'app' });
    expect(asEntry({ ...old, format: 'towpath-log/1', week: 0 })).toBeUndefined();
  });
});
