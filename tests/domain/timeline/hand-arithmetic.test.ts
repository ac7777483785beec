import { describe, expect, test } from 'vitest';
import { totalsOf } from '../../../src/domain/timeline/totals.ts';
import { timelineOf } from '../cues/plans.ts';

describe('totals against sums worked by hand', () => {
  // Common practice, no source: warm-up + sets x (run + walk) + cool-down, the last walk kept.
  // Columns: plan, segments, total min, main min, run min.
  test.each([
    ['5 min easy walk; 6 x (2 min run, 1 min walk); 5 min easy walk', 14, 28, 18, 12],
    ['5 min easy walk; 5 x (3 min run, 2 min walk); 5 min easy walk', 12, 35, 25, 15],
    ['6 min easy walk; 4 x (4 min run, 90 s walk); 4 min easy walk', 10, 32, 22, 16],
    ['5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk', 16, 31, 21, 14],
    ['5 min easy walk; 7 x (1 min walk, 2 min brisk walk); 5 min easy walk', 16, 31, 21, 0],
    ['2 x (3 x (1 min jog, 1 min walk), 2 min walk)', 14, 16, 16, 6],
    ['main: 20 min steady run', 1, 20, 20, 20],
    ['warm-up: 2 x 3 min jog; main: 4 x 30 s fast run; cool-down: 5 min walk', 7, 13, 2, 8],
  ])('TIME-2, TIME-6 %s', (text, segments, total, main, run) => {
    expect(totalsOf(timelineOf(text))).toEqual({
      seconds: total * 60,
      mainSeconds: main * 60,
      runSeconds: run * 60,
      segments,
    });
  });

  test('TIME-2 the run share of the first row is two thirds of its sets', () => {
    const { runSeconds, mainSeconds } = totalsOf(
      timelineOf('5 min easy walk; 6 x (2 min run, 1 min walk); 5 min easy walk'),
    );
    expect(runSeconds / mainSeconds).toBeCloseTo(0.6667, 4);
  });
});
