import { describe, expect, it } from 'vitest';
import {
  type Acceptance,
  apartId,
  decide,
  type Kept,
  ownId,
  placeOf,
  type Sender,
  type Verdict,
} from '../../../src/domain/exchange/decide.ts';

const ID = 'heron-loop-spring';
/** Imogen's key, the one she changed it to, and a stranger's. */
const [A, B, C, M] = ['key-a', 'key-b', 'key-c', 'key-m'];

const kept = (more: Partial<Kept> = {}): Kept => ({
  local: ID,
  id: ID,
  revision: 2,
  text: 'two',
  key: A,
  retired: [],
  ...more,
});

const next = (more: Partial<Sender> = {}): Sender => ({
  id: ID,
  revision: 3,
  text: 'three',
  key: A,
  was: [],
  ...more,
});

interface Case {
  readonly says: string;
  readonly here: readonly Kept[];
  readonly comes: Sender;
  readonly verdict: Verdict;
  readonly choices: readonly Acceptance[];
  /** Where the first choice puts it. */
  readonly to?: string;
  readonly retired?: readonly string[];
}

const MATRIX: readonly Case[] = [
  {
    says: 'the first of its id, signed',
    here: [],
    comes: next(),
    verdict: { kind: 'new' },
    choices: ['keep'],
    to: ID,
  },
  {
    says: 'the first of its id, unsigned',
    here: [],
    comes: next({ key: null }),
    verdict: { kind: 'new' },
    choices: ['keep'],
    to: ID,
  },
  {
    says: 'another id by the same leader',
    here: [kept({ local: 'other', id: 'other' })],
    comes: next(),
    verdict: { kind: 'new' },
    choices: ['keep'],
    to: ID,
  },
  {
    says: 'a later revision by the same key',
    here: [kept()],
    comes: next(),
    verdict: { kind: 'update', from: 2 },
    choices: ['keep'],
    to: ID,
  },
  {
    says: 'the very same again',
    here: [kept()],
    comes: next({ revision: 2, text: 'two' }),
    verdict: { kind: 'same' },
    choices: [],
  },
  {
    says: 'the very same, its signature taken off',
    here: [kept()],
    comes: next({ revision: 2, text: 'two', key: null }),
    verdict: { kind: 'same' },
    choices: [],
  },
  {
    says: 'the same unsigned copy again',
    here: [kept({ key: null })],
    comes: next({ revision: 2, text: 'two', key: null }),
    verdict: { kind: 'same' },
    choices: [],
  },
  {
    says: 'an earlier revision by the same key',
    here: [kept()],
    comes: next({ revision: 1, text: 'one' }),
    verdict: { kind: 'older', stored: 2 },
    choices: [],
  },
  {
    says: 'the same revision by the same key, other content',
    here: [kept()],
    comes: next({ revision: 2, text: 'another two' }),
    verdict: { kind: 'conflict' },
    choices: ['take-over'],
    to: ID,
  },
  {
    says: 'a later revision, unsigned',
    here: [kept()],
    comes: next({ key: null }),
    verdict: { kind: 'copy' },
    choices: ['keep-apart'],
    to: `${ID}.2`,
  },
  {
    says: 'an unsigned one beside an unsigned one',
    here: [kept({ key: null })],
    comes: next({ key: null }),
    verdict: { kind: 'copy' },
    choices: ['keep-apart'],
    to: `${ID}.2`,
  },
  {
    says: 'a second unsigned copy',
    here: [kept(), kept({ local: `${ID}.2`, key: null, text: 'copy' })],
    comes: next({ key: null }),
    verdict: { kind: 'copy' },
    choices: ['keep-apart'],
    to: `${ID}.3`,
  },
  {
    says: 'a later revision by a new key that the old one signed',
    here: [kept()],
    comes: next({ key: B, was: [A] }),
    verdict: { kind: 'rotated', from: 2 },
    choices: ['keep'],
    to: ID,
    retired: [A],
  },
  {
    says: 'two changes of keys at once, for someone who missed one',
    here: [kept()],
    comes: next({ key: C, was: [A, B] }),
    verdict: { kind: 'rotated', from: 2 },
    choices: ['keep'],
    to: ID,
    retired: [A, B],
  },
  {
    says: 'a new key that the old one signed, on the same revision',
    here: [kept()],
    comes: next({ revision: 2, key: B, was: [A] }),
    verdict: { kind: 'conflict' },
    choices: ['take-over'],
    to: ID,
  },
  {
    says: 'a new key that the old one signed, on an earlier revision',
    here: [kept()],
    comes: next({ revision: 1, key: B, was: [A] }),
    verdict: { kind: 'older', stored: 2 },
    choices: [],
  },
  {
    says: 'a later revision by a key that was replaced',
    here: [kept({ key: B, retired: [A] })],
    comes: next({ key: A }),
    verdict: { kind: 'retired' },
    choices: [],
  },
  {
    says: 'a key that a replaced key signed afterwards',
    here: [kept({ key: B, retired: [A] })],
    comes: next({ key: M, was: [A] }),
    verdict: { kind: 'key-changed', from: 2 },
    choices: ['take-over', 'keep-apart'],
    to: ID,
    retired: [A],
  },
  {
    says: 'a key that nothing vouches for',
    here: [kept()],
    comes: next({ key: M }),
    verdict: { kind: 'key-changed', from: 2 },
    choices: ['take-over', 'keep-apart'],
    to: ID,
    retired: [],
  },
  {
    says: 'a signed one where an unsigned one is',
    here: [kept({ key: null })],
    comes: next(),
    verdict: { kind: 'key-changed', from: 2 },
    choices: ['take-over', 'keep-apart'],
    to: ID,
  },
  {
    says: 'an update of the one of two that has its key',
    here: [kept(), kept({ local: `${ID}.2`, key: M, text: 'apart', revision: 1 })],
    comes: next({ key: M, revision: 2, text: 'apart, later' }),
    verdict: { kind: 'update', from: 1 },
    choices: ['keep'],
    to: `${ID}.2`,
  },
];

describe('what a programme that comes in is to what is here', () => {
  it.each(MATRIX)(
    'XCHG-11 $says: $verdict.kind',
    ({ here, comes, verdict, choices, to, retired }) => {
      const decision = decide(comes, here);
      expect(decision.verdict).toEqual(verdict);
      expect(decision.choices).toEqual(choices);
      const [first] = choices;
      if (first === undefined) return;
      const taken = here.map(({ local }) => local);
      const place = placeOf(comes, decision, first, taken);
      expect(place.local).toBe(to);
      if (retired !== undefined) expect(place.retired).toEqual(retired);
    },
  );

  it('XCHG-11 every kind of answer is in the table', () => {
    const kinds = new Set(MATRIX.map(({ verdict }) => verdict.kind));
    expect([...kinds].sort()).toEqual([
      'conflict',
      'copy',
      'key-changed',
      'new',
      'older',
      'retired',
      'rotated',
      'same',
      'update',
    ]);
  });

  it('XCHG-12 nothing unsigned ever takes the place of what is here', () => {
    const unsigned = MATRIX.filter(({ comes, here }) => comes.key === null && here.length > 0);
    expect(unsigned.length).toBeGreaterThan(3);
    for (const { says, choices } of unsigned)
      expect(
        choices.filter((choice) => choice !== 'keep-apart'),
        says,
      ).toEqual([]);
  });

  it('XCHG-13 only a change of keys that was signed shuts the old key out', () => {
    const decision = decide(next({ key: M }), [kept()]);
    // Digits compared wrongly must not lock the true leader out for good.
    expect(placeOf(next({ key: M }), decision, 'take-over', [ID]).retired).toEqual([]);
    const taken = kept({ key: M, text: 'three', revision: 3 });
    expect(decide(next({ revision: 4, text: 'four' }), [taken]).verdict.kind).toBe('key-changed');
  });

  it('XCHG-13 a key that is in use is never shut out, whatever its sender says they were', () => {
    const comes = next({ key: B, was: [A, B] });
    const decision = decide(comes, [kept({ retired: [C] })]);
    expect(decision.verdict.kind).toBe('rotated');
    expect(placeOf(comes, decision, 'keep', [ID])).toEqual({ local: ID, retired: [C, A] });
  });

  it('XCHG-12 the same words by another key are not the same', () => {
    const here = [kept({ text: 'three' })];
    expect(decide(next({ key: M }), here).verdict).toEqual({ kind: 'key-changed', from: 2 });
    expect(decide(next(), here).verdict.kind).toBe('same');
  });

  it('XCHG-14 what is kept apart has an id that no programme can have, and its own is known', () => {
    expect(apartId(ID, [])).toBe(`${ID}.2`);
    expect(apartId(ID, [`${ID}.2`, `${ID}.3`])).toBe(`${ID}.4`);
    expect(ownId(`${ID}.12`)).toBe(ID);
    expect(ownId(ID)).toBe(ID);
  });
});
