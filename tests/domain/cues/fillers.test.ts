import { describe, expect, test } from 'vitest';
import type { ClipLengths, Talk } from '../../../src/domain/cues/cue.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { REMINDER_IDS } from '../../../src/domain/cues/reminders.ts';
import { timelineOf } from './plans.ts';
import { evenVoice, REAL_VOICE } from './voices.ts';

const fillers = (
  text: string,
  reminders: string[],
  talk: Talk = 'usual',
  lengths: ClipLengths = REAL_VOICE,
) =>
  planCues(timelineOf(text), { talk, reminders, target: 50, lengths })
    .cues.filter(({ kind }) => kind === 'reminder' || kind === 'effort')
    .map(({ at, text: words, note }) => [at / 1000, note ? `${words} (${note})` : words]);

const EFFORT = 'You can talk in whole sentences.';
const TALL = 'Stand tall, eyes on the path ahead.';
const ARMS = 'Let your arms swing evenly.';

describe('places for reminders and effort', () => {
  test('CUE-10 effort that found no room where the main part begins comes up within it', () => {
    expect(fillers('main: 5 s run, 2 min run', [])).toEqual([[35, EFFORT]]);
  });

  test('CUE-10 a reminder goes into the middle of the widest gap', () => {
    // Nothing is quiet for 3 min. The walk is quiet from about 1:02 to halfway at 2:50; the
    // nearest to the middle, 1:56, that is round before the walk's end at 3:50 is 1:50.
    expect(fillers('main: 1 min run, 2:50 walk, 1:50 run', ['stand-tall'])).toEqual([[110, TALL]]);
  });

  test('CUE-10 gaps alike are taken far from each other', () => {
    // Ten runs of 2 min with gaps alike; the first is taken, then the farthest, then the middle.
    const said = fillers('main: 10 x (2 min run, 20 s walk)', ['stand-tall', 'even-arms']);
    const sets = said.map(([at]) => Math.floor((at as number) / 140));
    expect(sets).toHaveLength(3);
    expect(sets[0]).toBeLessThanOrEqual(1);
    expect(sets[2]).toBeGreaterThanOrEqual(8);
    expect(sets[1]).toBeGreaterThanOrEqual(3);
    expect(sets[1]).toBeLessThanOrEqual(6);
  });

  test('CUE-10 each reminder is said once at usual where there is room, and twice at many', () => {
    const text = '5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk';
    const reminders = ['stand-tall', 'even-arms', 'light-steps'];
    const count = (talk: Talk) => {
      const words = fillers(text, reminders, talk).map(([, said]) => said);
      return [TALL, ARMS, 'Take short, light steps.'].map(
        (said) => words.filter((it) => it === said).length,
      );
    };
    expect(count('usual')).toEqual([1, 1, 1]);
    for (const times of count('many')) expect(times).toBeGreaterThanOrEqual(2);
  });

  test('CUE-10 many reminders do not crowd a session: at most one in 2 min at usual', () => {
    // 36 min in which no quiet is too long, and more reminders than there are two minutes.
    expect(fillers('main: 12 x (2 min run, 1 min walk)', [...REMINDER_IDS])).toHaveLength(18);
  });

  test('CUE-9, CUE-12 without reminders the activity and the time left are said, at round times', () => {
    // Quiet from 0:13 to halfway at 6:00 needs one place, in its middle: 3:06, so 3:00. From
    // 6:01 to "one minute" at 9:00 is under three minutes.
    expect(fillers('warm-up: 10 min easy walk; main: 2 min run', [])).toEqual([
      [180, 'Easy walk. Seven minutes to go.'],
    ]);
  });

  test('CUE-12 after two other things in one segment the time left is said', () => {
    // 15 min before halfway need five places, 14 min after it need four. Effort was said at the
    // start and is due again after 10 min.
    const reminders = ['stand-tall', 'even-arms', 'light-steps', 'soft-shoulders'];
    expect(fillers('main: 30 min run', reminders).map(([, words]) => words)).toEqual([
      TALL,
      ARMS,
      'Run. Twenty-two minutes to go.',
      EFFORT,
      'Take short, light steps.',
      'Run. Twelve minutes to go.',
      EFFORT,
      'Let your shoulders drop.',
      'Run. Four minutes to go.',
    ]);
  });

  test('CUE-12 places that are wanted and not needed get no time left', () => {
    // "Many" fills the last minute of the warm-up as well, where it is never quiet for 90 s.
    const text = '5 min easy walk; 7 x (1 min walk, 2 min brisk walk); 5 min easy walk';
    const reminders = ['stand-tall', 'even-arms', 'light-steps', 'sip', 'uphill', 'downhill'];
    const said = fillers(text, reminders, 'many');
    expect(said.filter(([at]) => 241 < Number(at) && Number(at) < 290)).toHaveLength(1);
    expect(said.filter(([, words]) => String(words).includes('seconds to go'))).toEqual([]);
  });

  test('CUE-11 a single reminder is not repeated within 10 min at usual', () => {
    const times = fillers('main: 60 min run', ['stand-tall']).filter(([, words]) => words === TALL);
    expect(times.length).toBeGreaterThanOrEqual(4);
    times.slice(1).forEach(([at], i) => {
      expect((at as number) - (times[i]?.[0] as number)).toBeGreaterThanOrEqual(600);
    });
  });

  test('CUE-11 a reminder for which there was no room keeps its turn', () => {
    // A voice of two seconds a word: beside the leader’s own words, which stand before the last
    // reminder, it says "three minutes and five seconds to go" until after the next place.
    const ids = ['uphill', 'one-ear', 'sip', 'be-seen', 'slippery', 'look-both-ways'];
    const all = [...ids, 'easy-breath', 'breathe-out', 'Wave at the herons', 'talk-test'];
    const text = 'main: 58 s stand, 13 x (49 s stand), 394 s stand @ 60%';
    const said = fillers(text, all, 'many', evenVoice(1888))
      .map(([, words]) => String(words))
      .filter((words) => !words.endsWith('to go.') && !words.startsWith('You can'));
    expect(said[8]).toMatch(/to go\. \(Wave at the herons\)$/);
    expect(said[9]).toBe('Say a sentence aloud. If it breaks up, slow down.');
  });

  test('CUE-15 effort is said again in a long run, and not shortly before a change that says it', () => {
    const hard = 'A few words at a time.';
    const [first, ...more] = fillers('main: 30 min run @ 80%, 5 min run @ 60%', ['stand-tall'])
      .filter(([, words]) => words === hard)
      .map(([at]) => Number(at));
    expect(first).toBeGreaterThanOrEqual(600);
    expect(first).toBeLessThanOrEqual(1500);
    for (const at of more) expect(at).toBeLessThanOrEqual(1500);
    const short = fillers('main: 14 min run @ 80%, 5 min run @ 60%', ['stand-tall']);
    expect(short.filter(([, words]) => words === hard)).toEqual([]);
  });

  test('CUE-15 effort is said where the next that says it is five minutes away or more', () => {
    const hard = 'A few words at a time.';
    const times = (text: string) =>
      fillers(text, ['stand-tall'])
        .filter(([, words]) => words === hard)
        .map(([at]) => Number(at));
    // Due from 10 min on, and not within 5 min before the change at 20 min.
    const said = times('main: 20 min run @ 80%, 5 min run @ 60%');
    expect(said).toHaveLength(1);
    expect(said[0]).toBeGreaterThanOrEqual(600);
    expect(said[0]).toBeLessThanOrEqual(900);
  });

  test('CUE-15 segments beside each other that are as hard both hear it', () => {
    const said = fillers('main: 15 min run @ 60%, 15 min jog @ 60%', [])
      .filter(([, words]) => !String(words).endsWith('to go.'))
      .map(([at]) => Number(at));
    expect(said.some((at) => at < 900)).toBe(true);
    expect(said.some((at) => at > 900)).toBe(true);
  });

  test('CUE-10 effort wants no place where the harder segments are over within 10 min', () => {
    // The last run ends at 7:30, the session at 13:00: the one reminder has the widest gap.
    const text = 'main: 3 x (90 s run, 90 s walk); cool-down: 4 min easy walk';
    const said = fillers(text, ['stand-tall']);
    expect(said.map(([, words]) => words)).toEqual([TALL]);
    expect(said[0]?.[0]).toBeGreaterThan(540);
  });

  test('CUE-10 a place has room for the longest reminder and 20 s on either side', () => {
    const voice = evenVoice(1000);
    const plan = (seconds: number, reminders: string[]) =>
      planCues(timelineOf(`main: ${seconds} s run`), {
        talk: 'usual',
        reminders,
        target: 50,
        lengths: voice,
      }).cues;
    // Every reminder and every effort is one clip here, of a second.
    const isFilled: boolean[] = [];
    for (let seconds = 40; seconds <= 150; seconds++) {
      const bare = plan(seconds, []);
      const widest = Math.max(...bare.slice(1).map(({ at }, n) => at - (bare[n]?.end ?? 0)));
      const filled = plan(seconds, ['stand-tall']).some(({ kind }) => kind === 'reminder');
      expect([seconds, filled]).toEqual([seconds, widest >= 2 * 21_000]);
      isFilled.push(filled);
    }
    expect(new Set(isFilled).size).toBe(2);
  });

  test('CUE-16 a reminder in the leader’s own words is shown beside the time left, in its turn', () => {
    const said = fillers('main: 30 min run', ['stand-tall', 'Wave at the herons']);
    const texts = said.map(([, words]) => String(words));
    expect(texts[0]).toBe(TALL);
    expect(texts[1]).toMatch(/^Run\. Twenty-\w+ minutes to go\. \(Wave at the herons\)$/);
  });

  test('CUE-16 an id that the catalogue has not is free words', () => {
    const said = fillers('main: 10 min run', ['constructor', 'stand-taller']);
    expect(said.map(([, words]) => words).join(' ')).toContain('(constructor)');
  });

  test('CUE-16 a step’s note stands beside its change and its start', () => {
    const { cues } = planCues(
      timelineOf('main: 1 min walk "Over the footbridge", 1 min run "Easy"'),
      {
        talk: 'few',
        reminders: [],
        target: 50,
        lengths: REAL_VOICE,
      },
    );
    expect(cues.filter(({ note }) => note).map(({ kind, note }) => [kind, note])).toEqual([
      ['start', 'Over the footbridge'],
      ['change', 'Easy'],
    ]);
  });
});
