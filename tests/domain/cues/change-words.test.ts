import { describe, expect, test } from 'vitest';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { ACTIVITIES } from '../../../src/domain/programme/plan.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import { mainOnly, step, timelineOf } from './plans.ts';
import { REAL_VOICE, wordsOf } from './voices.ts';

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

  test('CUE-8 a set that is short throughout is not told in the segment behind it', () => {
    expect(wordsOf('main: 2 x (5 s run, 5 s walk), 1 min run')).toEqual([
      ...['Run.', 'Walk.', 'Run.', 'Walk.'],
      'Run. One minute.',
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

  test('CUE-15 an effort that the leader wrote is not said again while nothing changes', () => {
    expect(wordsOf('main: 2 x 1 min run @ 80%')).toEqual([
      'Set 1 of 2. Run. One minute. A few words at a time.',
      'Set 2 of 2. Last set. Carry on. Run. One minute.',
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
    const { cues } = planCues(timelineOf('main: 5 s walk, 1 min run'), {
      talk: 'many',
      reminders: [],
      target: 50,
      lengths: REAL_VOICE,
    });
    const starts = cues.filter(({ kind }) => kind === 'start');
    expect(starts.map(({ text, clips }) => [text, clips.map(({ at }) => at)])).toEqual([
      ['Walk.', [0, 1500]],
    ]);
  });

  test.each(ACTIVITIES)(
    'CUE-5 %s is over in time in the shortest segment, first or later',
    (activity) => {
      const { cues } = planCues(layOut(mainOnly(step(5, activity), step(5, activity))), {
        talk: 'usual',
        reminders: [],
        target: 50,
        lengths: REAL_VOICE,
      });
      const [first, second] = cues.filter(({ kind }) => kind === 'start' || kind === 'change');
      expect(first?.end).toBeLessThanOrEqual(5000 - 1200);
      expect(second?.end).toBeLessThanOrEqual(10_000 - 1200);
    },
  );
});
