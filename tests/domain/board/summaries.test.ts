import { max as d3Max, min as d3Min, quantile as d3Quantile } from 'd3-array';
import fc from 'fast-check';
import * as statistics from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { board, groupWeekSentences, noReplyText } from '../../../src/copy/board.ts';
import type { GroupBoard, GroupWeek } from '../../../src/domain/board/board.ts';
import { boardOf } from '../../../src/domain/board/board-of.ts';
import { medianOf, quantile, spreadOf } from '../../../src/domain/board/spread.ts';
import { boardInput, byHand, dayOf, member, on, type Told } from './members.ts';

const values = fc.array(
  fc.oneof(
    fc.integer({ min: 0, max: 10 }),
    fc.integer({ min: -100, max: 100 }).map((tenth) => tenth / 10),
  ),
  { minLength: 1, maxLength: 60 },
);

describe('how values lie', () => {
  it('BOARD-10 the middle and the ends are those of a statistics library', () => {
    // simple-statistics (npm, ISC): median, min and max. Its quantile is of another definition.
    fc.assert(
      fc.property(values, (list) => {
        const spread = spreadOf(list);
        expect(spread?.median).toBeCloseTo(statistics.median(list), 12);
        expect(spread?.least).toBe(statistics.min(list));
        expect(spread?.most).toBe(statistics.max(list));
        expect(spread?.count).toBe(list.length);
        expect(medianOf(list)).toBeCloseTo(statistics.median(list), 12);
      }),
      { numRuns: 500 },
    );
  });

  it('BOARD-10 the quartiles are those of a library with the same definition', () => {
    // d3-array (npm, ISC): its manual says that quantile is R's default method, R-7, which is
    // definition 7 of Hyndman and Fan 1996, The American Statistician 50(4):361-5.
    fc.assert(
      fc.property(values, fc.double({ min: 0, max: 1, noNaN: true }), (list, p) => {
        const spread = spreadOf(list);
        expect(spread?.lower).toBeCloseTo(d3Quantile(list, 0.25) ?? Number.NaN, 12);
        expect(spread?.upper).toBeCloseTo(d3Quantile(list, 0.75) ?? Number.NaN, 12);
        expect(spread?.least).toBe(d3Min(list));
        expect(spread?.most).toBe(d3Max(list));
        const ordered = [...list].sort((a, b) => a - b);
        expect(quantile(ordered, p)).toBeCloseTo(d3Quantile(list, p) ?? Number.NaN, 12);
      }),
      { numRuns: 500 },
    );
  });

  it('BOARD-10 values by hand', () => {
    // R: quantile(1:10) gives 1, 3.25, 5.5, 7.75, 10; quantile(1:4) gives 1, 1.75, 2.5, 3.25, 4
    // (R's documentation of its default, type 7; values from memory, and by h = (n - 1) p + 1).
    const five = (list: readonly number[]) => {
      const spread = spreadOf(list);
      return spread && [spread.least, spread.lower, spread.median, spread.upper, spread.most];
    };
    expect(five([10, 9, 8, 7, 6, 5, 4, 3, 2, 1])).toEqual([1, 3.25, 5.5, 7.75, 10]);
    expect(five([4, 1, 3, 2])).toEqual([1, 1.75, 2.5, 3.25, 4]);
    expect(five([6])).toEqual([6, 6, 6, 6, 6]);
    expect(spreadOf([])).toBeUndefined();
    expect(medianOf([])).toBeUndefined();
  });
});

const person = (n: number): string => `p${n}`.padEnd(24, 'x');

const curlew = (groups: readonly GroupBoard[], week = 1): GroupWeek => {
  const found = groups.find(({ id }) => id === 'curlew')?.weeks[week - 1];
  if (found === undefined) throw new Error('no such week');
  return found;
};

describe('a group in one week', () => {
  it('BOARD-11 heard from n of m: as many as the leader expects, or as are known where that is more', () => {
    const setup = {
      format: 'towpath-board/1' as const,
      programmeId: 'heron-loop-spring',
      expected: { curlew: { count: 40, at: 1 }, wren: { count: 1, at: 1 } },
      forgotten: [],
    };
    const heard = [
      ...Array.from({ length: 15 }, (_, n) =>
        member(person(n), { sessions: [{ week: 1, effort: 5 }] }),
      ),
      byHand('1', { name: 'Marit', group: 'wren' }),
      byHand('2', { name: 'Ada', group: 'wren' }),
    ];
    const { groups } = boardOf(boardInput(heard, { setup }));
    expect([curlew(groups).heard, curlew(groups).of]).toEqual([15, 40]);
    expect(groups[0]?.weeks[0]).toMatchObject({ heard: 0, of: 2, sessions: 0 });
    expect(noReplyText(curlew(groups))).toBe('No reply yet (25)');
    expect(groupWeekSentences(groups[0]?.weeks[0] as GroupWeek)).toEqual(['Heard from 0 of 2.']);
    expect(noReplyText({ heard: 2, of: 2 })).toBe(board.everyone);
  });

  it('BOARD-11 who told since and did nothing is heard, who was ticked is heard, who kept it is not', () => {
    const heard = [
      member(person(1), { toldOn: on(2, 1), sessions: [] }),
      member(person(2), { toldOn: on(2, 1), leftOut: 1, sessions: [] }),
      byHand('3', { name: 'Bo', group: 'curlew' }),
    ];
    const days = [dayOf(on(1, 6), { week: 1 }, { 'hand.3': true })];
    expect(curlew(boardOf(boardInput(heard, { days })).groups)).toMatchObject({
      heard: 2,
      of: 3,
      sessions: 1,
    });
  });

  it('BOARD-11 effort, niggles, signs and what was cut short are of all its people’s sessions', () => {
    const sessions: readonly (readonly Told[])[] = [
      [
        { week: 1, effort: 5 },
        { week: 1, weekday: 4, effort: 6, niggle: { place: 'knee' } },
      ],
      [{ week: 1, effort: 7, done: 60 }],
      [
        { week: 1, sign: true },
        { week: 2, effort: 10 },
      ],
    ];
    const heard = sessions.map((list, n) => member(person(n), { sessions: list }));
    const week = curlew(boardOf(boardInput(heard)).groups);
    expect(week).toMatchObject({
      heard: 3,
      sessions: 4,
      niggles: 1,
      signs: 1,
      cutShort: 1,
      target: 5,
    });
    expect(week.felt).toEqual({ count: 3, least: 5, lower: 5.5, median: 6, upper: 6.5, most: 7 });
    expect(week.gap).toEqual({ count: 3, least: 0, lower: 0.5, median: 1, upper: 1.5, most: 2 });
    expect(groupWeekSentences(week)).toEqual([
      'Heard from 3 of 3, 4 sessions.',
      'Felt 6, half between 5.5 and 6.5 over 3 rated sessions; meant 5.',
      'That is 1 point harder than meant in the middle, half between +0.5 and +1.5.',
      '1 warning sign.',
      '1 niggle.',
      '1 session cut short.',
    ]);
  });

  it('BOARD-10 summaries agree with the libraries over any answers', () => {
    const told = fc.record(
      {
        week: fc.integer({ min: 1, max: 3 }),
        weekday: fc.integer({ min: 1, max: 7 }),
        effort: fc.integer({ min: 0, max: 10 }),
      },
      { requiredKeys: ['week', 'weekday'] },
    );
    fc.assert(
      fc.property(fc.array(fc.array(told, { maxLength: 4 }), { maxLength: 8 }), (people) => {
        const heard = people.map((sessions, n) =>
          member(person(n), { sessions: sessions as Told[] }),
        );
        const { groups } = boardOf(boardInput(heard, { today: on(4, 1) }));
        for (const week of [1, 2, 3]) {
          const of = people.flat().filter((each) => each.week === week);
          const felt = of.flatMap(({ effort }) => effort ?? []);
          const said = curlew(groups, week);
          expect(said.sessions).toBe(of.length);
          if (felt.length === 0) expect(said.felt).toBeUndefined();
          else {
            expect(said.felt?.median).toBeCloseTo(statistics.median(felt), 12);
            expect(said.felt?.lower).toBeCloseTo(d3Quantile(felt, 0.25) ?? Number.NaN, 12);
            expect(said.felt?.count).toBe(felt.length);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
