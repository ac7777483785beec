import { describe, expect, test } from 'vitest';
import type { Talk } from '../../../src/domain/cues/cue.ts';
import { JOIN_PAUSE_MS, PHRASE_PAUSE_MS } from '../../../src/domain/cues/phrases.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { ACTIVITIES } from '../../../src/domain/programme/plan.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import type { Percent } from '../../../src/domain/units.ts';
import { mainOnly, step, timelineOf } from './plans.ts';
import { evenVoice, REAL_VOICE } from './voices.ts';

/** The words where each segment begins. */
function wordsOf(text: string, lengths = REAL_VOICE, talk: Talk = 'usual', target: Percent = 50) {
  const { cues } = planCues(timelineOf(text), { talk, reminders: [], target, lengths });
  return cues.filter(({ kind, at }) => kind === 'change' || at === 0).map((cue) => cue.text);
}

/** The longest clips with which so many of them, joined and apart, fit into some time. */
const longest = (room: number, clips: number, joins: number, pauses: number): number =>
  Math.floor((room - joins * JOIN_PAUSE_MS - pauses * PHRASE_PAUSE_MS) / clips);

describe('words that do not fit', () => {
  // Every clip is equally long. "Set 1 of 2" is four clips with three joins between them, "Set 1"
  // two clips and one join, as is "fifteen seconds"; all other phrases are one clip.
  // A segment of 15 s has 15 - 3.2 - 0.7 = 11.1 s for its words.
  const FORMS = [
    ['Main set. Set 1 of 2. Run. Fifteen seconds. You can talk in whole sentences.', 9, 4, 4],
    ['Main set. Set 1 of 2. Run. Fifteen seconds.', 8, 4, 3],
    ['Set 1 of 2. Run. Fifteen seconds.', 7, 4, 2],
    ['Set 1. Run. Fifteen seconds.', 5, 2, 2],
    ['Run. Fifteen seconds.', 3, 1, 1],
    ['Run.', 1, 0, 0],
  ] as const;

  test.each(FORMS)('CUE-4 while it fits, and no longer: %s', (form, clips, joins, pauses) => {
    const plan = 'warm-up: 1 min walk; main: 2 x (15 s run, 1 min walk)';
    const fits = longest(11_100, clips, joins, pauses);
    expect(wordsOf(plan, evenVoice(fits))[1]).toBe(form);
    const barer = FORMS[FORMS.findIndex(([words]) => words === form) + 1];
    // The activity is said even where it does not fit.
    expect(wordsOf(plan, evenVoice(fits + 1))[1]).toBe(barer?.[0] ?? form);
  });

  test('CUE-4, CUE-18 "carry on" goes before the set does', () => {
    const fits = longest(11_100, 8, 4, 3);
    const words = (length: number) => wordsOf('main: 3 x 15 s run', evenVoice(length))[1];
    expect(words(fits)).toBe('Set 2 of 3. Carry on. Run. Fifteen seconds.');
    expect(words(fits + 1)).toBe('Set 2 of 3. Run. Fifteen seconds.');
  });

  test('CUE-4, CUE-8 without room for "of m", the last set is still the last', () => {
    const fits = longest(11_100, 8, 4, 3);
    const words = (length: number) =>
      wordsOf('main: 2 x (15 s run, 1 min walk)', evenVoice(length))[2];
    expect(words(fits)).toBe('Set 2 of 2. Last set. Run. Fifteen seconds.');
    expect(words(fits + 1)).toBe('Last set. Run. Fifteen seconds.');
  });

  test('CUE-4, CUE-7 halfway finds a place, then ends the words of a change, then goes', () => {
    // Segments of 10 s have 6.1 s. "Run. Ten seconds." is three clips; a halfway of its own
    // begins a second later.
    const inPlace = longest(5100, 4, 1, 1);
    const inWords = longest(6100, 4, 1, 2);
    const timeline = timelineOf(
      'main: 10 s walk, 10 s run, 10 s walk, 10 s run, 10 s walk, 10 s run',
    );
    const said = (length: number) => {
      const lengths = evenVoice(length);
      const { cues } = planCues(timeline, { talk: 'usual', reminders: [], target: 50, lengths });
      return cues.filter(({ text }) => text.includes('Halfway')).map((cue) => [cue.kind, cue.text]);
    };
    expect(said(inPlace)).toEqual([['halfway', 'Halfway.']]);
    expect(said(inPlace + 1)).toEqual([['change', 'Run. Ten seconds. Halfway.']]);
    expect(said(inWords)).toEqual([['change', 'Run. Ten seconds. Halfway.']]);
    expect(said(inWords + 1)).toEqual([]);
  });

  test('CUE-6 opening words leave "Ten seconds" its place', () => {
    // A segment of 45 s says it at 35 s, and a second before that it is quiet: 33.3 s for words.
    const fits = longest(33_300, 9, 4, 4);
    const words = wordsOf(
      'warm-up: 1 min walk; main: 2 x (45 s run, 1 min walk)',
      evenVoice(fits + 1),
    );
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
