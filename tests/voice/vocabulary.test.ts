import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  callOf,
  captionOf,
  type Phrase,
  SAY,
  sayActivity,
  sayDuration,
  sayEffort,
  sayGroup,
  sayGroups,
  sayPart,
  sayReminder,
  sayRound,
  sayRoundOnly,
  saySet,
  saySetOnly,
  sayTimeLeft,
  spokenDuration,
  TONE,
} from '../../src/domain/cues/phrases.ts';
import { isReminderId, REMINDER_IDS, REMINDERS } from '../../src/domain/cues/reminders.ts';
import { CLIPS } from '../../src/domain/cues/vocabulary.ts';
import { ACTIVITIES, PARTS } from '../../src/domain/programme/plan.ts';
import { msOfSeconds } from '../../src/domain/units.ts';
import { wordsOf } from '../../src/voice/build/hearing/phrases.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';
import { secondsSaid } from './seconds-said.ts';

const { manifest } = voicePack();
const seconds = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** Every choice of some of eight groups. */
const SETS_OF_GROUPS = seconds(1, 255).map((set) =>
  seconds(1, 8).filter((group) => (set >> (group - 1)) & 1),
);

/** Every phrase that a session can ask for, each once. */
function everything(): Phrase[] {
  const turns = seconds(1, 50).flatMap((of) => seconds(1, of).map((n) => ({ n, of })));
  const durations = seconds(1, 9000).map(msOfSeconds);
  return [
    ...ACTIVITIES.map(sayActivity),
    ...PARTS.map(sayPart),
    ...durations.flatMap((duration) => [sayDuration(duration), sayTimeLeft(duration)]),
    ...turns.flatMap((turn) => [
      saySet(turn),
      sayRound(turn),
      saySetOnly(turn),
      sayRoundOnly(turn),
    ]),
    ...seconds(1, 8).map(sayGroup),
    ...SETS_OF_GROUPS.map(sayGroups),
    ...seconds(1, 8).map((group) => [callOf(group)]),
    ...seconds(0, 100).map(sayEffort),
    ...REMINDER_IDS.map(sayReminder),
    ...Object.values(SAY),
    ...Object.values(TONE).map((tone) => [tone]),
  ];
}

describe('the vocabulary', () => {
  it('VOICE-1 everything that can be said is in the pack', () => {
    const missing = new Set(
      everything()
        .flat()
        .filter((clip) => !Object.hasOwn(manifest.clips, clip)),
    );
    expect([...missing]).toEqual([]);
  });

  it('VOICE-1 the pack and the vocabulary have the same clips, with the same captions', () => {
    expect(Object.keys(manifest.clips).sort()).toEqual(Object.keys(CLIPS).sort());
    for (const [id, { text }] of Object.entries(manifest.clips))
      expect(text, id).toBe(CLIPS[id]?.text);
  });

  it('VOICE-1 every clip of the vocabulary is used by some phrase', () => {
    const used = new Set(everything().flat());
    expect(Object.keys(CLIPS).filter((clip) => !used.has(clip))).toEqual([]);
  });

  it('VOICE-1 there are about two dozen reminders, and free text is none of them', () => {
    expect(REMINDER_IDS.length).toBeGreaterThanOrEqual(24);
    expect(isReminderId('stand-tall')).toBe(true);
    expect(isReminderId('Wave at the herons')).toBe(false);
    expect(isReminderId('toString')).toBe(false);
  });

  it('VOICE-1 reminders are short enough to be heard on the move', () => {
    for (const id of REMINDER_IDS) {
      const { lengthMs = 0 } = manifest.clips[`reminder.${id}`] ?? {};
      expect(lengthMs, REMINDERS[id]).toBeLessThan(4500);
    }
  });
});

describe('lengths of time', () => {
  it.each([
    [5, 'five seconds'],
    [45, 'forty five seconds'],
    [60, 'one minute'],
    [61, 'one minute and one second'],
    [65, 'one minute and five seconds'],
    [75, 'one minute fifteen'],
    [90, 'one minute thirty'],
    [97, 'one minute and thirty seven seconds'],
    [120, 'two minutes'],
    [122, 'two minutes'],
    [123, 'two minutes and five seconds'],
    [150, 'two minutes thirty'],
    [1335, 'twenty two minutes fifteen'],
    [3600, 'an hour'],
    [3900, 'an hour and five minutes'],
    [3930, 'an hour and five minutes thirty'],
    [7200, 'two hours'],
    [9000, 'two hours and thirty minutes'],
  ])('VOICE-2 %i seconds are "%s"', (length, words) => {
    expect(wordsOf(sayDuration(msOfSeconds(length)))).toBe(words);
  });

  it('VOICE-2 every length is heard as what it is, to 2.5 s, and to the second up to two minutes', () => {
    for (const length of seconds(5, 9000)) {
      const said = secondsSaid(wordsOf(sayDuration(msOfSeconds(length))));
      expect(said, `${length} s`).toBe(spokenDuration(msOfSeconds(length)) / 1000);
      expect(Math.abs(said - length), `${length} s`).toBeLessThanOrEqual(length > 120 ? 2.5 : 0);
    }
  });
});

describe('captions', () => {
  it('VOICE-3 a change reads as sentences', () => {
    const change = [
      ...sayPart('main'),
      ...saySet({ n: 3, of: 7 }),
      ...sayActivity('run'),
      ...sayDuration(msOfSeconds(90)),
    ];
    expect(captionOf(change)).toBe('Main set. Set 3 of 7. Run. One minute thirty.');
  });

  it.each([
    [[...sayRound({ n: 1, of: 2 }), ...sayActivity('brisk walk')], 'Round 1 of 2. Brisk walk.'],
    [sayGroup(3), 'Group 3.'],
    [[...sayGroups([2, 3]), ...sayActivity('walk')], 'Groups 2 and 3. Walk.'],
    [[...sayGroups([1, 2, 4, 8]), ...SAY.finished], 'Groups 1, 2, 4 and 8. Finished.'],
    [sayGroups([5]), 'Group 5.'],
    [SAY.waiting, 'Waiting for the start.'],
    [sayTimeLeft(msOfSeconds(300)), 'Five minutes to go.'],
    [SAY.coolDown, 'Cool-down. Easy walk. Five minutes.'],
    [[TONE.short, TONE.harder], ''],
    [['tone.wake', ...sayActivity('easy walk')], 'Easy walk.'],
    [sayReminder('sip'), 'Thirsty? Take a sip.'],
    [[], ''],
  ])('VOICE-3 %j reads "%s"', (clips, caption) => {
    expect(captionOf(clips)).toBe(caption);
  });

  it('VOICE-3 a caption has the words that are spoken and no others', () => {
    const figures = (text: string): string =>
      text.replaceAll(/\d+/g, (n) => wordsOf([`number.${n}`]));
    const bare = (text: string): string =>
      figures(text)
        .toLowerCase()
        .replaceAll('-', ' ')
        .replaceAll(/[^a-z ]/g, '');
    fc.assert(
      fc.property(fc.constantFrom(...everything()), fc.constantFrom(...everything()), (a, b) => {
        expect(bare(captionOf([...a, ...b]))).toBe(wordsOf([...a, ...b]));
      }),
      { numRuns: 2000 },
    );
  });
});
