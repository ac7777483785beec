import { describe, expect, test } from 'vitest';
import type { Talk } from '../../../src/domain/cues/cue.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import type { Percent } from '../../../src/domain/units.ts';
import { timelineOf } from './plans.ts';
import { evenVoice, REAL_VOICE } from './voices.ts';

/** The words where each segment begins. */
function wordsOf(text: string, lengths = REAL_VOICE, talk: Talk = 'usual', target: Percent = 50) {
  const { cues } = planCues(timelineOf(text), { talk, reminders: [], target, lengths });
  return cues.filter(({ kind, at }) => kind === 'change' || at === 0).map((cue) => cue.text);
}

describe('words that do not fit', () => {
  // A segment of 15 s has 15 - 3.2 - 0.7 = 11.1 s for its words. With every clip L ms long, 96 ms
  // within a phrase and 288 ms between two:
  //   all          9 L + 4 x 96 + 4 x 288 = 9 L + 1536    fits up to L = 1062
  //   less effort  8 L + 4 x 96 + 3 x 288 = 8 L + 1248                   1231
  //   less part    7 L + 4 x 96 + 2 x 288 = 7 L +  960                   1448
  //   less "of 2"  5 L + 2 x 96 + 2 x 288 = 5 L +  768                   2066
  //   less set     3 L + 1 x 96 + 1 x 288 = 3 L +  384                   3572
  const plan = 'warm-up: 1 min walk; main: 2 x (15 s run, 1 min walk)';
  test.each([
    [1062, 'Main set. Set 1 of 2. Run. Fifteen seconds. You can talk in whole sentences.'],
    [1063, 'Main set. Set 1 of 2. Run. Fifteen seconds.'],
    [1231, 'Main set. Set 1 of 2. Run. Fifteen seconds.'],
    [1232, 'Set 1 of 2. Run. Fifteen seconds.'],
    [1448, 'Set 1 of 2. Run. Fifteen seconds.'],
    [1449, 'Set 1. Run. Fifteen seconds.'],
    [2066, 'Set 1. Run. Fifteen seconds.'],
    [2067, 'Run. Fifteen seconds.'],
    [3572, 'Run. Fifteen seconds.'],
    [3573, 'Run.'],
    [9000, 'Run.'],
  ])('CUE-4 with clips of %i ms: %s', (length, expected) => {
    expect(wordsOf(plan, evenVoice(length))[1]).toBe(expected);
  });

  // 8 L + 1248 with "carry on", 7 L + 960 without.
  test.each([
    [1231, 'Set 2 of 3. Carry on. Run. Fifteen seconds.'],
    [1232, 'Set 2 of 3. Run. Fifteen seconds.'],
  ])(
    'CUE-4, CUE-18 "carry on" goes before the set does, with clips of %i ms',
    (length, expected) => {
      expect(wordsOf('main: 3 x 15 s run', evenVoice(length))[1]).toBe(expected);
    },
  );

  // Segments of 10 s have 6.1 s. "Run. Ten seconds." is 3 L + 384; a halfway of its own begins a
  // second later: 4 L + 1384 up to 1179; in the words it makes 4 L + 672: up to 1357.
  test.each([
    [1179, 'halfway', 'Halfway.'],
    [1180, 'change', 'Run. Ten seconds. Halfway.'],
    [1357, 'change', 'Run. Ten seconds. Halfway.'],
    [1358, undefined, undefined],
  ])(
    'CUE-4, CUE-7 halfway finds a place, ends the words of a change, or goes: %i ms',
    (length, kind, text) => {
      const timeline = timelineOf(
        'main: 10 s walk, 10 s run, 10 s walk, 10 s run, 10 s walk, 10 s run',
      );
      const options = {
        talk: 'usual',
        reminders: [],
        target: 50,
        lengths: evenVoice(length),
      } as const;
      const said = planCues(timeline, options).cues.filter((cue) => cue.text.includes('Halfway'));
      expect(said.map((cue) => [cue.kind, cue.text])).toEqual(kind ? [[kind, text]] : []);
    },
  );

  test('CUE-6 opening words leave "Ten seconds" its place', () => {
    // 45 s: until 34 s there are 33.3 s; 9 L + 1536 would end at 34.1 s with L = 3540.
    const words = wordsOf('warm-up: 1 min walk; main: 2 x (45 s run, 1 min walk)', evenVoice(3540));
    expect(words[1]).toBe('Main set. Set 1 of 2. Run. Forty-five seconds.');
  });
});

describe('what is said where a segment begins', () => {
  test.each<[string, string[]]>([
    [
      'warm-up: 5 min easy walk; main: 2 x (1 min walk, 2 min run); cool-down: 5 min easy walk',
      [
        'Warm-up. Easy walk. Five minutes.',
        'Main set. Set 1 of 2. Walk. One minute. You can talk in whole sentences.',
        'Run. Two minutes.',
        'Set 2 of 2. Last set. Walk. One minute.',
        'Run. Two minutes.',
        'Cool-down. Easy walk. Five minutes.',
      ],
    ],
    [
      'main: 2 x (2 x (30 s run, 30 s walk), 2 min walk)',
      [
        'Round 1 of 2. Set 1 of 2. Run. Thirty seconds. You can talk in whole sentences.',
        'Walk. Thirty seconds.',
        'Set 2 of 2. Run. Thirty seconds.',
        'Walk. Thirty seconds.',
        'Carry on. Walk. Two minutes.',
        'Round 2 of 2. Set 1 of 2. Run. Thirty seconds.',
        'Walk. Thirty seconds.',
        'Set 2 of 2. Last set. Run. Thirty seconds.',
        'Walk. Thirty seconds.',
        'Carry on. Walk. Two minutes.',
      ],
    ],
    [
      'main: 2 x (30 s run, 30 s walk); 2 min walk; 2 x (20 s fast run, 40 s walk)',
      [
        'Set 1 of 2. Run. Thirty seconds. You can talk in whole sentences.',
        'Walk. Thirty seconds.',
        'Set 2 of 2. Run. Thirty seconds.',
        'Walk. Thirty seconds.',
        'Carry on. Walk. Two minutes.',
        'New sets. Set 1 of 2. Fast run. Twenty seconds.',
        'Walk. Forty seconds.',
        'Set 2 of 2. Last set. Fast run. Twenty seconds.',
        'Walk. Forty seconds.',
      ],
    ],
    [
      'main: 2 x (2 x 30 s run, 2 x 30 s walk)',
      [
        'Round 1 of 2. Set 1 of 2. Run. Thirty seconds. You can talk in whole sentences.',
        'Set 2 of 2. Carry on. Run. Thirty seconds.',
        'New sets. Set 1 of 2. Walk. Thirty seconds.',
        'Set 2 of 2. Carry on. Walk. Thirty seconds.',
        'Round 2 of 2. Set 1 of 2. Run. Thirty seconds.',
        'Set 2 of 2. Carry on. Run. Thirty seconds.',
        'New sets. Set 1 of 2. Walk. Thirty seconds.',
        'Set 2 of 2. Last set. Carry on. Walk. Thirty seconds.',
      ],
    ],
    [
      'main: 1 x (2 min run, 1 min walk)',
      ['Run. Two minutes. You can talk in whole sentences.', 'Walk. One minute.'],
    ],
  ])('CUE-8 %s', (text, expected) => {
    expect(wordsOf(text)).toEqual(expected);
  });

  test('CUE-8 a set that begins with a short segment is told at its first longer one', () => {
    expect(wordsOf('main: 3 x (8 s fast run, 52 s walk)')).toEqual([
      'Fast run.',
      'Set 1 of 3. Walk. Fifty-two seconds.',
      'Fast run.',
      'Set 2 of 3. Walk. Fifty-two seconds.',
      'Fast run.',
      'Set 3 of 3. Last set. Walk. Fifty-two seconds.',
    ]);
  });

  test('CUE-8 sets of the warm-up are counted, and a main repeat after them is not "new sets"', () => {
    const words = wordsOf('warm-up: 2 x (30 s walk, 30 s brisk walk); main: 2 x 1 min run');
    expect(words[0]).toBe('Warm-up. Set 1 of 2. Walk. Thirty seconds.');
    expect(words[2]).toBe('Set 2 of 2. Last set. Walk. Thirty seconds.');
    expect(words[4]).toMatch(/^Main set\. Set 1 of 2\. Run\./);
  });

  test('CUE-3 a session that is only a main part does not name it; one that is only walking does', () => {
    expect(wordsOf('main: 20 min run')[0]).toMatch(/^Run\. Twenty minutes\./);
    expect(wordsOf('warm-up: 5 min walk; main: 20 min run')[1]).toMatch(/^Main set\. Run\./);
  });

  test('CUE-3 a length over two minutes is said to five seconds', () => {
    const words = wordsOf('warm-up: 2:03 walk; main: 1:07 run, 2:58 walk');
    expect(words[0]).toContain('Two minutes and five seconds.');
    expect(words[1]).toContain('One minute and seven seconds.');
    expect(words[2]).toContain('Three minutes.');
  });

  test.each([
    [0, 'Rest.'],
    [20, 'So easy that you could sing.'],
    [40, 'You can chat freely.'],
    [60, 'You can talk in whole sentences.'],
    [80, 'A few words at a time.'],
    [90, 'A single word at a time.'],
    [100, 'All that you have.'],
  ])('CUE-15 a target of %i %% is said where the main part begins: %s', (target, words) => {
    const said = wordsOf(
      'warm-up: 2 min walk; main: 2 min run, 2 min walk',
      REAL_VOICE,
      'usual',
      target,
    );
    expect(said[1]).toBe(`Main set. Run. Two minutes. ${words}`);
    expect(said.filter((text) => text.includes(words))).toHaveLength(1);
  });

  test('CUE-15 an effort that the leader wrote is said when it is new, and when it is all that changes', () => {
    const said = wordsOf(
      'main: 2 min run, 2 x (1 min run @ 80%, 1 min walk), 1 min run @ 40%, 1 min run @ 80%',
    );
    expect(said.map((text) => text.replace(/^.*(One|Two) minutes?\.? ?/, ''))).toEqual([
      'You can talk in whole sentences.',
      'A few words at a time.',
      '',
      '',
      '',
      'You can chat freely.',
      'A few words at a time.',
    ]);
  });

  test('CUE-18 more of the same effort in other words is not "carry on"', () => {
    const said = wordsOf('main: 1 min run, 1 min run, 1 min steady run, 1 min run @ 70%');
    expect(said.map((text) => text.includes('Carry on'))).toEqual([false, true, false, false]);
  });

  test('CUE-13 at few there is activity and duration', () => {
    const text = 'warm-up: 2 min walk; main: 2 x (1 min run @ 80%, 8 s walk)';
    expect(wordsOf(text, REAL_VOICE, 'few')).toEqual([
      'Walk. Two minutes.',
      'Run. One minute.',
      'Walk.',
      'Run. One minute.',
      'Walk.',
    ]);
  });

  test('CUE-1 a first segment under 10 s is its activity, said once', () => {
    const { cues } = planCues(timelineOf('main: 5 s stand, 1 min walk'), {
      talk: 'many',
      reminders: [],
      target: 50,
      lengths: REAL_VOICE,
    });
    const starts = cues.filter(({ kind }) => kind === 'start');
    expect(starts.map(({ text, clips }) => [text, clips.map(({ at }) => at)])).toEqual([
      ['Stand.', [0, 1500]],
    ]);
  });
});
