import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GUARD, type LaneLengths, layOut } from '../../../src/domain/track/layout.ts';
import { FRAME_MS, ms } from '../../../src/domain/units.ts';

const lengths = fc.record(
  {
    holding: fc.integer({ min: 1, max: 2_000_000 }).map(ms),
    oneMore: fc.integer({ min: 60_000, max: 80_000 }).map(ms),
    coolDown: fc.integer({ min: 1, max: 400_000 }).map(ms),
  },
  { requiredKeys: ['holding', 'oneMore'] },
);
const session = fc.integer({ min: 5000, max: 9_000_000 }).map(ms);
const forEveryLayout = (check: (layout: ReturnType<typeof layOut>, given: LaneLengths) => void) =>
  fc.assert(fc.property(session, lengths, (total, given) => check(layOut(total, given), given)));

describe('layout of a track', () => {
  test('TRACK-6 the session is followed by its tail, holding, one minute more, end', () => {
    const layout = layOut(ms(1_860_000), { holding: ms(1_800_000), oneMore: ms(63_000) });
    expect(layout).toEqual({
      session: 1_860_000,
      tail: { start: 1_860_000, end: 1_980_000 },
      holding: { start: 1_980_000, end: 3_780_000 },
      oneMore: {
        start: 3_900_000,
        end: 3_963_000,
        minute: { start: 3_903_000, end: 3_963_000 },
      },
      total: 4_083_000,
    });
  });

  test('WAIT-1 a wait lies before 0 and moves nothing', () => {
    const lanes = { holding: ms(1_800_000), oneMore: ms(63_000) };
    const leadIn = { length: ms(24_000), sounds: [{ start: ms(-24_000), end: ms(-23_000) }] };
    const without = layOut(ms(1_860_000), lanes);
    expect(layOut(ms(1_860_000), lanes, leadIn)).toEqual({ ...without, leadIn });
    expect('leadIn' in without).toBe(false);
  });

  test('TRACK-7 the cool-down lane comes last, and only where it is given', () => {
    const lanes = { holding: ms(1_800_000), oneMore: ms(63_000) };
    const without = layOut(ms(1_860_000), lanes);
    const layout = layOut(ms(1_860_000), { ...lanes, coolDown: ms(300_000) });
    expect(without.coolDown).toBeUndefined();
    expect(layout.coolDown).toEqual({ start: 4_083_000, end: 4_383_000 });
    expect(layout.total).toBeGreaterThanOrEqual(4_383_000 + GUARD);
  });

  test('TRACK-6 every lane starts on a frame, and so does the end', () => {
    forEveryLayout((layout) => {
      const starts = [
        layout.holding.start,
        layout.oneMore.start,
        layout.coolDown?.start ?? 0,
        layout.total,
      ];
      for (const start of starts) expect(start % FRAME_MS).toBe(0);
    });
  });

  test('TRACK-6 two minutes of quiet or a frame more lie behind the session and every lane', () => {
    forEveryLayout((layout) => {
      const { tail, holding, oneMore, coolDown, total } = layout;
      const quiet = [
        [layout.session, holding.start],
        [holding.end, oneMore.start],
        [oneMore.end, coolDown?.start ?? total],
        [coolDown?.end ?? oneMore.end, total],
      ] as const;
      for (const [from, to] of quiet) {
        expect(to - from).toBeGreaterThanOrEqual(120_000);
        expect(to - from).toBeLessThan(120_000 + FRAME_MS);
      }
      expect(tail).toEqual({ start: layout.session, end: holding.start });
    });
  });

  test('TRACK-8 the extra minute is one minute, and ends where its lane ends', () => {
    forEveryLayout(({ oneMore }, given) => {
      expect(oneMore.minute.end - oneMore.minute.start).toBe(60_000);
      expect(oneMore.minute.end).toBe(oneMore.end);
      expect(oneMore.end - oneMore.start).toBe(given.oneMore);
    });
  });
});
