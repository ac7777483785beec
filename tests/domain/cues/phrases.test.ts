import { describe, expect, test } from 'vitest';
import {
  captionOf,
  type Phrase,
  SAY,
  sayActivity,
  sayDuration,
  sayGroup,
  sayGroups,
  spokenDuration,
  TONE,
} from '../../../src/domain/cues/phrases.ts';
import { CLIPS, LAST_GROUP } from '../../../src/domain/cues/vocabulary.ts';
import { ms } from '../../../src/domain/units.ts';

const inSeconds = (seconds: number): string => captionOf(sayDuration(ms(seconds * 1000)));

describe('a length of time as it is spoken', () => {
  test.each([
    [1, 'One second.'],
    [40, 'Forty seconds.'],
    [60, 'One minute.'],
    [65, 'One minute and five seconds.'],
    [70, 'One minute ten.'],
    [72, 'One minute and twelve seconds.'],
    [90, 'One minute thirty.'],
    [120, 'Two minutes.'],
    [630, 'Ten minutes thirty.'],
    [3595, 'Fifty-nine minutes fifty-five.'],
    [3600, 'An hour.'],
    [3660, 'An hour and one minute.'],
    [3690, 'An hour and one minute thirty.'],
    [3605, 'An hour and five seconds.'],
    [7200, 'Two hours.'],
    [7500, 'Two hours and five minutes.'],
    [10_740, 'Two hours and fifty-nine minutes.'],
  ])('VOICE-3 %i s', (seconds, said) => {
    expect(inSeconds(seconds)).toBe(said);
  });

  test('VOICE-3 up to two minutes every second counts, over them every fifth', () => {
    const spoken = (milliseconds: number) => spokenDuration(ms(milliseconds)) / 1000;
    expect([119_499, 119_500, 120_000, 120_001, 122_499, 122_500].map(spoken)).toEqual([
      119, 120, 120, 120, 120, 125,
    ]);
  });
});

test('VOICE-3 standing and stretching are said at greater length than they are written', () => {
  expect(captionOf(sayActivity('stand'))).toBe('Stand still.');
  expect(captionOf(sayActivity('stretch'))).toBe('Stretching.');
  expect(captionOf(sayActivity('brisk walk'))).toBe('Brisk walk.');
});

test('VOICE-3 a tone has no words', () => {
  expect(captionOf([TONE.tick])).toBe('');
  expect(captionOf([TONE.wake, ...SAY.waiting])).toBe('Waiting for the start.');
});

describe('groups as they are spoken', () => {
  test.each([
    [[3], 'Group 3.'],
    [[2, 5], 'Groups 2 and 5.'],
    [[2, 3, 5], 'Groups 2, 3 and 5.'],
    [[1, 2, 3, 4, 5, 6, 7, 8], 'Groups 1, 2, 3, 4, 5, 6, 7 and 8.'],
  ])('VOICE-3 %j', (numbers, said) => {
    expect(captionOf(sayGroups(numbers))).toBe(said);
  });

  test('VOICE-3 the number of a group is a figure, that of the minutes behind it a word', () => {
    expect(captionOf(sayGroup(4))).toBe('Group 4.');
    const all: Phrase = [...sayGroups([1, 2]), 'activity.run', 'number.2', 'word.minutes'];
    expect(captionOf(all)).toBe('Groups 1 and 2. Run. Two minutes.');
    expect(captionOf(['phrase.all-groups', 'number.2', 'word.minutes'])).toMatch(/Two minutes\.$/);
  });

  test('VOICE-5 four groups are called by a high note and low pips, four the other way about', () => {
    const calls = Array.from({ length: LAST_GROUP }, (_, n) => CLIPS[`tone.group-${n + 1}`]?.say);
    const heard = calls.map((say) => {
      if (typeof say !== 'object' || !('pips' in say)) throw new Error('no call');
      // As long as what is in it: the note, and a rest before each pip.
      const { seconds, note, pip, pips, restSeconds } = say;
      expect(seconds).toBeCloseTo(note.seconds + pips * (restSeconds + pip.seconds), 9);
      return [note.fromHz, pip.fromHz, pips];
    });
    expect(heard).toEqual([
      ...[1, 2, 3, 4].map((pips) => [1000, 600, pips]),
      ...[1, 2, 3, 4].map((pips) => [600, 1000, pips]),
    ]);
  });
});
