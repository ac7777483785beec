import { describe, expect, test } from 'vitest';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { timelineOf } from './plans.ts';
import { evenVoice, REAL_VOICE } from './voices.ts';

const halfways = (text: string, lengths = REAL_VOICE) =>
  planCues(timelineOf(text), { talk: 'usual', reminders: [], target: 50, lengths })
    .cues.filter((cue) => cue.text.includes('Halfway'))
    .map(({ kind, at, text: words }) => [at / 1000, kind, words]);

describe('halfway', () => {
  test('CUE-7 of a session is said at its time where nothing else is', () => {
    expect(halfways('5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk')).toEqual([
      [930, 'halfway', 'Halfway.'],
    ]);
  });

  test('CUE-7 on a boundary moves behind the words of the change', () => {
    // 5 + 6 x 3 + 5 min: half is 14:00, where the fourth set begins.
    const [only, ...more] = halfways(
      '5 min easy walk; 6 x (2 min run, 1 min walk); 5 min easy walk',
    );
    expect(more).toEqual([]);
    expect(only?.slice(1)).toEqual(['halfway', 'Halfway.']);
    expect(only?.[0]).toBeGreaterThan(14 * 60 + 5);
    expect(only?.[0]).toBeLessThanOrEqual(14 * 60 + 30);
  });

  test('CUE-7 of segments from 10 min on is said too, with what is left; under 10 min it is not', () => {
    expect(halfways('main: 12 min run, 10 min walk, 9:59 jog')).toEqual([
      [360, 'halfway', 'Halfway. Run. Six minutes to go.'],
      [959.5, 'halfway', 'Halfway.'],
      [1020, 'halfway', 'Halfway. Walk. Five minutes to go.'],
    ]);
  });

  test.each([
    ['main: 20 min run', 600],
    ['5 min easy walk; 20 min run; 5 min easy walk', 900],
    ['5 min easy walk; 20 min run; 6 min easy walk', 930],
    ['6 min easy walk; 20 min run; 5 min easy walk', 930],
  ])('CUE-7 of session and segment is said once when they meet: %s', (text, at) => {
    expect(halfways(text)).toEqual([[at, 'halfway', 'Halfway.']]);
  });

  test('CUE-7 of session and segment is said twice when they are over 30 s apart', () => {
    expect(halfways('5 min easy walk; 20 min run; 6:02 easy walk')).toEqual([
      [900, 'halfway', 'Halfway. Run. Ten minutes to go.'],
      [931, 'halfway', 'Halfway.'],
    ]);
  });

  test('CUE-7 moves no farther than 30 s: then it ends the words of a change', () => {
    // Half is 88 s, among short segments from 60 s to 116 s. With clips of 0.5 s the last place
    // before them is at 56.3 s (31.7 s away), the first behind at 119 s (31 s away); the words
    // of the walk at 116.7 s are within 30 s.
    const short = Array(7).fill('8 s run').join(', ');
    expect(halfways(`main: 1 min walk, ${short}, 1 min walk`, evenVoice(500))).toEqual([
      [116.7, 'change', 'Walk. One minute. Halfway.'],
    ]);
  });

  test('CUE-7 is left out where only short segments are within 30 s', () => {
    expect(halfways('main: 20 x (8 s run, 8 s walk)')).toEqual([]);
  });
});
