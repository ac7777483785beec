import { describe, expect, test } from 'vitest';
import { JOIN_PAUSE_MS, PHRASE_PAUSE_MS } from '../../../src/domain/cues/phrases.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { timelineOf } from './plans.ts';
import { evenVoice, wordsOf } from './voices.ts';

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
