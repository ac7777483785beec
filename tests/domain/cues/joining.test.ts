import { describe, expect, test } from 'vitest';
import {
  callOf,
  captionOf,
  JOIN_PAUSE_MS,
  PHRASE_PAUSE_MS,
  pauseBetween,
  sayRoundOnly,
} from '../../../src/domain/cues/phrases.ts';
import { cueOf } from '../../../src/domain/cues/speak.ts';
import { CLIPS, LAST_GROUP } from '../../../src/domain/cues/vocabulary.ts';
import { evenVoice, wordsOf } from './voices.ts';

describe('how clips join', () => {
  test.each([
    ['one minute thirty', 'word.minute', 'number.30'],
    ['two minutes thirty', 'word.minutes', 'number.30'],
    ['set three', 'word.set', 'number.3'],
    ['groups one, two', 'number.1', 'number.2'],
    ['ten seconds', 'number.10', 'word.seconds'],
  ])('VOICE-12 what belongs together follows closely: %s', (_, left, right) => {
    expect(pauseBetween(left, right)).toBe(JOIN_PAUSE_MS);
  });

  test.each([
    ['run, one minute', 'activity.run', 'number.1'],
    ['a second number after an hour', 'hours.1', 'number.5'],
    ['last set, run', 'phrase.last-set', 'activity.run'],
  ])('VOICE-12 a phrase of its own has a breath before it: %s', (_, left, right) => {
    expect(pauseBetween(left, right)).toBe(PHRASE_PAUSE_MS);
  });

  test('VOICE-3 tones are not in a caption, wherever they stand', () => {
    expect(captionOf(['tone.wake', 'activity.run', 'tone.tick', 'number.1', 'word.minute'])).toBe(
      'Run. One minute.',
    );
    expect(captionOf(['tone.wake'])).toBe('');
  });

  test('CUE-8 a round in short is its number', () => {
    expect(captionOf(sayRoundOnly({ n: 2, of: 3 }))).toBe('Round 2.');
  });

  test('CUE-14 there is no cue in which nothing is heard', () => {
    expect(() => cueOf({ kind: 'start', segment: 0 }, [], '', evenVoice(500))).toThrow('start');
  });
});

describe('the vocabulary', () => {
  test('VOICE-3 everything that is spoken has words, and joins in a way that there is', () => {
    for (const [id, { say, text, join }] of Object.entries(CLIPS)) {
      if (typeof say === 'string') {
        expect(say, id).toMatch(/\w/);
        expect(text, id).toMatch(/\w/);
      } else expect(text, id).toBe('');
      expect(['none', 'left', 'right', 'both'], id).toContain(join);
    }
  });

  test('LEAD-7 each group has a call of its own, of notes that can be heard', () => {
    const calls = Array.from({ length: LAST_GROUP }, (_, n) => CLIPS[callOf(n + 1)]?.say);
    for (const call of calls) {
      expect(call).toMatchObject({
        note: { seconds: expect.any(Number), fromHz: expect.any(Number) },
        pip: { seconds: expect.any(Number), fromHz: expect.any(Number) },
      });
    }
    expect(new Set(calls.map((call) => JSON.stringify(call))).size).toBe(LAST_GROUP);
  });
});

describe('new sets', () => {
  test('CUE-3 a second repeat of the main part is told at its first segment, in a set or not', () => {
    const text = 'main: 2 x (1 min run, 1 min walk); 2 x (1 min jog, 3 x (40 s run, 40 s walk))';
    const words = wordsOf(text);
    expect(words[4]).toBe('New sets. Round 1 of 2. Jog. One minute.');
    expect(words.filter((said) => said.includes('New sets'))).toHaveLength(1);
    expect(words[11]).toBe('Round 2 of 2. Jog. One minute.');
  });

  test('CUE-3 nothing is told of them in the warm-up, nor of a first repeat', () => {
    const text =
      'warm-up: 2 x (1 min walk, 1 min brisk walk); 2 x (40 s walk, 40 s brisk walk); main: 2 x (1 min run, 1 min walk)';
    expect(wordsOf(text).filter((said) => said.includes('New sets'))).toEqual([]);
  });
});
