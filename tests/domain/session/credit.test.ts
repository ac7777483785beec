import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  activeMs,
  beginStretch,
  coveredOf,
  doneMs,
  endStretch,
  goOnTo,
  type Interval,
  isSteady,
  merge,
  noCredit,
} from '../../../src/domain/session/credit.ts';
import { ms } from '../../../src/domain/units.ts';
import { NINE_O_CLOCK } from '../../drivers/sessions.ts';

const at = (wall: number, track: number) => ({ wall, track: ms(track) });

describe('what was gone through', () => {
  it('PLAY-12 overlapping stretches of the plan count once as done and twice as active', () => {
    let credit = beginStretch(noCredit, 'plan', at(0, 0));
    credit = goOnTo(credit, at(60_000, 60_000));
    credit = beginStretch(credit, 'plan', at(60_000, 40_000));
    credit = goOnTo(credit, at(90_000, 70_000));
    expect(coveredOf(credit)).toEqual([[0, 70_000]]);
    expect(doneMs(credit)).toBe(70_000);
    expect(activeMs(credit)).toBe(90_000);
  });

  it('PLAY-12 extra time is active and covers nothing of the plan', () => {
    let credit = beginStretch(noCredit, 'extra', at(0, 500_000));
    credit = endStretch(goOnTo(credit, at(60_000, 560_000)));
    expect(doneMs(credit)).toBe(0);
    expect(activeMs(credit)).toBe(60_000);
  });

  it('PLAY-18 the errors of many signs do not add up: only the ends of a stretch count', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -200, max: 200 }), { maxLength: 200 }), (errors) => {
        let credit = beginStretch(noCredit, 'plan', at(0, 10_000));
        errors.forEach((error, i) => {
          credit = goOnTo(credit, at((i + 1) * 1000, 10_000 + (i + 1) * 1000 + error));
        });
        const end = (errors.length + 1) * 1000;
        credit = goOnTo(credit, at(end, 10_000 + end));
        expect(activeMs(credit)).toBe(end);
        expect(coveredOf(credit)).toEqual([[10_000, 10_000 + end]]);
      }),
    );
  });

  it('PLAY-18 a seek ends a stretch, and what it passed over is not gone through', () => {
    let credit = beginStretch(noCredit, 'plan', at(NINE_O_CLOCK, 0));
    for (const [wall, track] of [
      [10_000, 10_000],
      [11_000, 60_000],
      [21_000, 70_000],
    ] as const)
      credit = goOnTo(credit, at(NINE_O_CLOCK + wall, track));
    expect(coveredOf(credit)).toEqual([
      [0, 10_000],
      [60_000, 70_000],
    ]);
    expect(activeMs(credit)).toBe(20_000);
  });

  it('PLAY-18 a move is steady up to a second ahead of the clock, and never backwards', () => {
    const steady = (wall: number, track: number) =>
      isSteady(at(NINE_O_CLOCK, 5000), at(NINE_O_CLOCK + wall, 5000 + track));
    expect(steady(1000, 2000)).toBe(true);
    expect(steady(1000, 2001)).toBe(false);
    expect(steady(0, 0)).toBe(true);
    expect(steady(1000, -1)).toBe(false);
    expect(steady(-1, 0)).toBe(false);
  });

  it('PLAY-18 a sound that runs ahead little by little ends a stretch when it is a second ahead', () => {
    let credit = beginStretch(noCredit, 'plan', at(NINE_O_CLOCK, 0));
    // Half a second more than the clock at every sign: 1 s ahead at 2 s, and 1.5 s at 3 s.
    for (let second = 1; second <= 4; second++)
      credit = goOnTo(credit, at(NINE_O_CLOCK + second * 1000, second * 1500));
    expect(coveredOf(credit)).toEqual([
      [0, 2000],
      [4500, 5500],
    ]);
  });

  it('PLAY-12 merged intervals are in order, apart from one another, and cover the same', () => {
    const interval = fc
      .tuple(fc.nat(1000), fc.nat(300))
      .map(([from, length]): Interval => [ms(from), ms(from + length)]);
    fc.assert(
      fc.property(fc.array(interval, { maxLength: 30 }), fc.nat(1300), (intervals, place) => {
        const merged = merge(intervals);
        merged.forEach(([from, to], i) => {
          expect(from).toBeLessThan(to);
          expect(from).toBeGreaterThan(merged[i - 1]?.[1] ?? -1);
        });
        const within = (list: readonly Interval[]) =>
          list.some(([from, to]) => place >= from && place < to);
        expect(within(merged)).toBe(within(intervals));
      }),
    );
  });
});
