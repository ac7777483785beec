import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Attendance } from '../../../src/domain/board/attendance.ts';
import { forgetPerson } from '../../../src/domain/board/erase-person.ts';
import { type AllBoards, readBoards, writeBoards } from '../../../src/domain/board/file.ts';
import { everyKey, type MergedBoards, mergeBoards } from '../../../src/domain/board/file-merge.ts';
import { previewOf } from '../../../src/domain/board/file-preview.ts';
import { type Heard, heardKey } from '../../../src/domain/board/heard.ts';
import { days, heards, PROGRAMME, ROSA, SUNDAY, setups, TAMSIN } from './records.ts';

const HOUR_MS = 3_600_000;
/** Somebody written in by hand. Their id may be in marks too. */
const HAND = 'hand.1';

/** Stands for SHA-256: what matters here is that each key has one of its own. */
const digestOf = (key: string): string =>
  [...key]
    .map((letter) => letter.charCodeAt(0).toString(16))
    .join('')
    .slice(-43)
    .padStart(43, 'x');
const digestsFor = (...boards: readonly AllBoards[]): ReadonlyMap<string, string> =>
  new Map(everyKey(...boards).map((key) => [key, digestOf(key)]));

const as = (person: string, heard: Heard): Heard => ({
  ...heard,
  key: heardKey(PROGRAMME, person),
  person,
});
/** Only who was written in by hand is ever said to be somebody else. */
const notSame = ({ known, ...rest }: Heard): Heard => {
  if (known === undefined) return rest;
  const { same: _, ...words } = known;
  return { ...rest, known: words };
};
const byHand = ({ told: _, ...heard }: Heard): Heard => ({ ...as(HAND, heard), entries: [] });

const forgotten = fc.uniqueArray(
  fc.record({
    digest: fc.constantFrom(...[ROSA, TAMSIN, HAND].map((id) => digestOf(heardKey(PROGRAMME, id)))),
    at: fc.integer({ min: 0, max: 3 }).map((hours) => SUNDAY + hours * HOUR_MS),
  }),
  { selector: ({ digest }) => digest, maxLength: 2 },
);

/** What one device may hold of one programme, people who were forgotten included. */
const boards: fc.Arbitrary<AllBoards> = fc
  .record({
    rosa: fc.option(heards, { nil: undefined }),
    tamsin: fc.option(heards, { nil: undefined }),
    hand: fc.option(heards, { nil: undefined }),
    day: fc.option(days, { nil: undefined }),
    setup: fc.option(setups, { nil: undefined }),
    forgotten,
  })
  .map(({ rosa, tamsin, hand, day, setup, forgotten: gone }) => ({
    heard: [
      ...(rosa ? [notSame(rosa)] : []),
      ...(tamsin ? [notSame(as(TAMSIN, tamsin))] : []),
      ...(hand ? [byHand(hand)] : []),
    ],
    days: day ? [day] : [],
    setups: setup
      ? [
          {
            ...setup,
            forgotten: [...gone].sort((a, b) => (a.digest < b.digest ? -1 : 1)),
          },
        ]
      : [],
  }));

/** One device after it took another's file in. */
function after(here: AllBoards, merged: MergedBoards): AllBoards {
  const put = <T>(old: readonly T[], next: readonly T[], keyOf: (each: T) => string) => [
    ...new Map([...old, ...next].map((each) => [keyOf(each), each])).values(),
  ];
  const heard = put(here.heard, merged.heard, ({ key }) => key);
  return {
    heard: heard.filter(({ key }) => !merged.gone.heard.includes(key)),
    days: put(here.days, merged.days, ({ key }) => key),
    setups: put(here.setups, merged.setups, ({ programmeId }) => programmeId),
  };
}
const taken = (here: AllBoards, given: AllBoards): AllBoards =>
  after(here, mergeBoards(here, given, digestsFor(here, given)));

/** The same in any order, and without what says nothing. */
const plain = ({ heard, days: lists, setups: said }: AllBoards) => ({
  heard: [...heard].sort((a, b) => (a.key < b.key ? -1 : 1)),
  days: lists.map(({ marks, ...day }: Attendance) => ({
    ...day,
    marks: Object.fromEntries(Object.entries(marks).sort(([a], [b]) => (a < b ? -1 : 1))),
  })),
  setups: said,
});
/** A device on which every forgetting was carried out. */
const settled = (each: AllBoards): AllBoards => taken(each, each);

describe('boards in a file', () => {
  it('KEEP-8 come back as they were kept', () => {
    fc.assert(
      fc.property(boards, (all) => {
        const read = readBoards(writeBoards(all, SUNDAY));
        expect(read.ok && { ...read.value }).toEqual({ ...all, refused: 0 });
      }),
    );
  });

  it('KEEP-8 each record goes through every bound, and what is no such file is told as what it is', () => {
    const rosa = {
      format: 'towpath-heard/1',
      key: heardKey(PROGRAMME, ROSA),
      programmeId: PROGRAMME,
      person: ROSA,
      entries: [],
    };
    const text = JSON.stringify({
      format: 'towpath-boards/1',
      heard: [rosa, { ...rosa, format: 'towpath-heard/2' }, { ...rosa, key: 'other' }, null, 5],
      days: 'none',
      setups: [{ format: 'towpath-board/1', programmeId: '../up', expected: {}, forgotten: [] }],
    });
    expect(readBoards(text)).toMatchObject({ ok: true, value: { heard: [rosa], refused: 6 } });
    expect(readBoards('{"format":"towpath-boards/2"}')).toEqual({ ok: false, error: 'newer' });
    for (const bad of ['', '[]', 'null', '{', '{"format":"towpath-keys/1"}', `${'['.repeat(99)}`])
      expect(readBoards(bad)).toEqual({ ok: false, error: 'damaged' });
    fc.assert(fc.property(fc.string(), (any) => !readBoards(any).ok));
    fc.assert(
      fc.property(fc.json(), (json) => {
        const whole = `{"format":"towpath-boards/1","heard":${json},"days":[${json}],"setups":${json}}`;
        expect(() => readBoards(whole)).not.toThrow();
      }),
    );
  });

  it('KEEP-9 two who lead and take in each other’s file end with the same boards', () => {
    fc.assert(
      fc.property(boards, boards, (a, b) => {
        expect(plain(taken(a, b))).toEqual(plain(taken(b, a)));
      }),
      { numRuns: 300 },
    );
  });

  it('KEEP-9 the same file twice brings nothing more, and a third device changes nothing', () => {
    fc.assert(
      fc.property(boards, boards, (a, b) => {
        const once = taken(a, b);
        const {
          heard,
          days: lists,
          setups: said,
          gone,
        } = mergeBoards(once, b, digestsFor(once, b));
        expect([heard, lists, said, gone.heard]).toEqual([[], [], [], []]);
      }),
      { numRuns: 300 },
    );
    fc.assert(
      fc.property(boards, boards, boards, (x, y, z) => {
        const [a, b, c] = [x, y, z].map((each) =>
          settled({ ...each, heard: each.heard.map(notSame) }),
        ) as [AllBoards, AllBoards, AllBoards];
        expect(plain(taken(taken(a, b), c))).toEqual(plain(taken(a, taken(b, c))));
      }),
      { numRuns: 300 },
    );
  });

  it('KEEP-6 whoever was forgotten on one side is on neither afterwards', () => {
    fc.assert(
      fc.property(boards, boards, fc.constantFrom(ROSA, TAMSIN, HAND), (a, b, person) => {
        const digests = digestsFor(a, b, {
          heard: [],
          days: [],
          setups: [],
        });
        const all = new Map([
          ...digests,
          ...[ROSA, TAMSIN, HAND].map((id) => {
            const key = heardKey(PROGRAMME, id);
            return [key, digestOf(key)] as const;
          }),
        ]);
        const now = SUNDAY + 9 * HOUR_MS;
        const change = forgetPerson(a, { programmeId: PROGRAMME, person, now, digests: all });
        const left = after(a, {
          heard: [],
          days: change.days,
          setups: change.setups,
          gone: change.gone,
        });
        for (const end of [left, taken(left, b), taken(b, left)])
          expect(JSON.stringify(end)).not.toContain(person);
      }),
      { numRuns: 300 },
    );
  });

  it('KEEP-8 a preview counts what would come, and changes nothing', () => {
    fc.assert(
      fc.property(boards, boards, (here, given) => {
        const digests = digestsFor(here, given);
        const preview = previewOf(here, { ...given, refused: 0 }, digests, new Map());
        const end = taken(here, given);
        const before = new Set(here.heard.map(({ key }) => key));
        expect(preview.people).toBe(given.heard.length);
        expect(preview.newPeople).toBe(end.heard.filter(({ key }) => !before.has(key)).length);
        expect(preview.newPeople + preview.forgotten).toBeLessThanOrEqual(preview.people);
      }),
    );
  });
});
