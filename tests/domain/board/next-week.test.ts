import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BoardInput } from '../../../src/domain/board/board.ts';
import { BOARD_LIMITS } from '../../../src/domain/board/limits.ts';
import type { Suggestion } from '../../../src/domain/board/next-week.ts';
import { suggestionsFor, weekToLookAt } from '../../../src/domain/board/suggest.ts';
import { boardInput, HERON, member, on, type Told, UNDATED } from './members.ts';

const person = (n: number): string => `p${n}`.padEnd(24, 'x');

/** People of Curlew who each had two sessions of a week that felt so. */
const group = (
  week: number,
  efforts: readonly number[],
  change: (n: number) => Partial<Told> = () => ({}),
) =>
  efforts.map((effort, n) =>
    member(person(n), {
      sessions: [1, 2].map((session) => ({
        week,
        weekday: 2 * session,
        session,
        effort,
        ...change(n),
      })),
    }),
  );

const target = (week: number): number => (HERON.weeks[week - 1]?.effort ?? 0) / 10;

function curlew(input: BoardInput, looked?: number): Suggestion {
  const found = suggestionsFor(input, looked).find((each) => each.group === 'curlew');
  if (found === undefined) throw new Error('no suggestion');
  return found;
}

const way = (input: BoardInput, looked?: number): readonly string[] => {
  const found = curlew(input, looked);
  return [found.way, found.why];
};

describe('what answers suggest', () => {
  it('BOARD-18 from Thursday on this week is looked at, before that the last', () => {
    const at = (today: string) => weekToLookAt(boardInput([], { today }));
    expect([on(2, 3), on(2, 4), on(2, 7), on(3, 1)].map(at)).toEqual([1, 2, 2, 2]);
    // Not before the first week, and not when no week comes after.
    expect([on(0, 7), on(1, 1), on(1, 4), on(6, 3), on(6, 4), on(8, 1)].map(at)).toEqual([
      undefined,
      undefined,
      1,
      5,
      undefined,
      undefined,
    ]);
    expect(
      suggestionsFor(boardInput([], { today: on(2, 7) })).map(({ group: id, looked, next }) => [
        id,
        looked,
        next,
      ]),
    ).toEqual([
      ['wren', 2, 3],
      ['dunlin', 2, 3],
      ['curlew', 2, 3],
      ['swift', 2, 3],
    ]);
    expect(suggestionsFor(boardInput([]), 6)).toEqual([]);
    expect(suggestionsFor(boardInput([]), 0)).toEqual([]);
  });

  it('BOARD-18 without dates the week that most have reached is looked at', () => {
    const heard = [2, 2, 5].map((week, n) =>
      member(person(n), { programme: UNDATED, sessions: [{ week }] }),
    );
    expect(weekToLookAt(boardInput(heard, { programme: UNDATED }))).toBe(2);
  });

  it('BOARD-19 fewer than three people, or under a third of a group, change nothing', () => {
    expect(way(boardInput(group(1, [9, 9])), 1)).toEqual(['go-on', 'too-few']);
    const setup = (count: number) => ({
      format: 'towpath-board/1' as const,
      programmeId: HERON.id,
      expected: { curlew: { count, at: 1 } },
      forgotten: [],
    });
    const of = (count: number) =>
      way(boardInput(group(1, [9, 9, 9, 9]), { setup: setup(count) }), 1);
    expect([of(12), of(13)]).toEqual([
      ['ease', 'much-harder'],
      ['go-on', 'too-few'],
    ]);
  });

  it('BOARD-20 half who found it much harder ease, half who found it harder repeat, fewer go on', () => {
    const t = target(1);
    expect(way(boardInput(group(1, [t + 3, t + 3, t, t])), 1)).toEqual(['ease', 'much-harder']);
    expect(way(boardInput(group(1, [t + 2, t + 2, t, t])), 1)).toEqual(['repeat', 'harder']);
    expect(way(boardInput(group(1, [t + 2, t, t, t])), 1)).toEqual(['go-on', 'as-meant']);
    expect(way(boardInput(group(1, [t + 1, t + 1, t + 1, t + 1])), 1)).toEqual([
      'go-on',
      'as-meant',
    ]);
  });

  it('BOARD-20 the numbers behind a suggestion are those of the people who were heard', () => {
    const heard = [
      ...group(1, [8, 7, 5, 3], (n) => (n === 1 ? { niggle: { place: 'knee' } } : {})),
      member(person(8), { sessions: [{ week: 1, done: 60 }] }),
      member(person(9), { toldOn: on(2, 1), sessions: [] }),
    ];
    expect(curlew(boardInput(heard), 1).grounds).toEqual({
      heard: 6,
      of: 6,
      rated: 4,
      harder: 2,
      muchHarder: 1,
      easier: 1,
      cutShort: 1,
      enough: 4,
      niggles: 1,
      signs: 0,
      hurt: 1,
      gap: 1,
    });
  });

  it('BOARD-20 niggles and signs of several weigh, those of one are a word with that one', () => {
    const hurt = (count: number) =>
      way(
        boardInput(
          group(1, [5, 5, 5, 5, 5, 5, 5, 5], (n) =>
            n < count ? { niggle: { place: 'shin' } } : {},
          ),
        ),
        1,
      );
    expect([1, 2, 4].map(hurt)).toEqual([
      ['go-on', 'as-meant'],
      ['repeat', 'niggles'],
      ['ease', 'niggles'],
    ]);
    const both = group(1, [7, 7, 7, 7, 5, 5, 5, 5], (n) => (n < 2 ? { sign: true } : {}));
    expect(way(boardInput(both), 1)).toEqual(['ease', 'niggles']);
  });

  it('BOARD-20 a week cut short by half, or thin for more than half, is repeated', () => {
    expect(way(boardInput(group(1, [5, 5, 5, 5], (n) => (n < 2 ? { done: 60 } : {}))), 1)).toEqual([
      'repeat',
      'cut-short',
    ]);
    const thin = [0, 1, 2].map((n) => member(person(n), { sessions: [{ week: 1, effort: 5 }] }));
    expect(way(boardInput(thin), 1)).toEqual(['repeat', 'thin']);
    expect(
      way(
        boardInput([
          ...thin,
          ...group(1, [5, 5, 5]).map((each, n) => ({ ...each, person: person(n + 4) })),
        ]),
        1,
      ),
    ).toEqual(['go-on', 'as-meant']);
  });

  it('BOARD-20 sessions that were done in another group say nothing of this one’s plan', () => {
    const away = group(1, [9, 9, 9], () => ({ group: 'swift' }));
    const { grounds, why } = curlew(boardInput(away), 1);
    expect([grounds.rated, grounds.enough, why]).toEqual([0, 3, 'as-meant']);
  });

  it('BOARD-21 clearly easier for most, and harder for nobody, asks for a little more', () => {
    const easy = (efforts: readonly number[], change?: (n: number) => Partial<Told>) =>
      way(boardInput(group(1, efforts, change)), 1);
    expect(easy([3, 3, 5])).toEqual(['stretch', 'easier']);
    expect(easy([3, 5, 5])).toEqual(['go-on', 'as-meant']);
    expect(easy([3, 3, 3, 3, 3, 7])).toEqual(['go-on', 'as-meant']);
    expect(easy([3, 3, 3, 3, 3, 3], (n) => (n === 0 ? { done: 60 } : {}))).toEqual([
      'go-on',
      'as-meant',
    ]);
  });

  it('BOARD-21 nothing is raised while a sign stands in the group', () => {
    const heard = (weekday: number) => [
      ...group(
        3,
        [3, 3, 3, 3].map((each) => each + 0),
      ),
      member(person(7), { sessions: [{ week: 1, weekday, sign: true }] }),
    ];
    const at = (weekday: number, today: string) =>
      way(boardInput(heard(weekday), { today, programme: far }), 3);
    const far = { ...HERON, goal: { ...HERON.goal, date: '2027-06-06' } };
    expect(at(2, on(3, 7))).toEqual(['go-on', 'sign']);
    expect(at(1, on(5, 2))).not.toEqual(['go-on', 'sign']);
  });

  it('BOARD-21 nothing is raised, and nothing missed made up for, within two weeks of the event', () => {
    const t = target(4);
    const input = boardInput(group(4, [t - 3, t - 3, t - 3]), { today: on(4, 7) });
    expect(way(input, 4)).toEqual(['go-on', 'event-near']);
    const thin = [0, 1, 2].map((n) => member(person(n), { sessions: [{ week: 4, effort: t }] }));
    expect(way(boardInput(thin, { today: on(4, 7) }), 4)).toEqual(['go-on', 'event-near']);
  });

  it('BOARD-21 before a week that asks for less already, a week too hard is no reason to repeat it', () => {
    // The last week of the Heron Loop is lighter than the one before.
    const t = target(5);
    expect(way(boardInput(group(5, [t + 2, t + 2, t + 2]), { today: on(5, 7) }), 5)).toEqual([
      'go-on',
      'lighter',
    ]);
  });

  it('BOARD-22 more felt effort never leads to more', () => {
    const order = ['stretch', 'go-on', 'repeat', 'ease'];
    const far = { ...HERON, goal: { ...HERON.goal, date: '2027-09-05' } };
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 10 }), { minLength: 3, maxLength: 9 }),
        fc.integer({ min: 1, max: 10 }),
        fc.constantFrom(1, 2, 3),
        (efforts, more, week) => {
          const rank = (list: readonly number[]) =>
            order.indexOf(
              curlew(boardInput(group(week, list), { today: on(week, 7), programme: far }), week)
                .way,
            );
          const harder = efforts.map((each) => Math.min(10, each + more));
          expect(rank(harder)).toBeGreaterThanOrEqual(rank(efforts));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('BOARD-23 every number says what it decides and where it is from', () => {
    for (const { value, reason, from } of Object.values(BOARD_LIMITS)) {
      expect(value).toBeGreaterThan(0);
      expect(reason).toMatch(/^[A-Z].{30,}$/);
      expect(from).toMatch(/^common practice, no source|doi 10\./);
    }
  });
});
