import { describe, expect, test } from 'vitest';
import type { CuePlan } from '../../../src/domain/cues/cue.ts';
import {
  COOL_DOWN,
  planCoolDown,
  planHolding,
  planOneMore,
  planPocketCheck,
  planSample,
} from '../../../src/domain/cues/lanes.ts';
import { DEFAULT_EFFORT } from '../../../src/domain/programme/plan.ts';
import { evenVoice, REAL_VOICE, soundsOf } from './voices.ts';

const listed = ({ cues }: CuePlan) => cues.map(({ at, kind, text }) => [at / 1000, kind, text]);
const options = {
  talk: 'usual',
  reminders: ['stand-tall'],
  target: 50,
  lengths: REAL_VOICE,
} as const;

describe('the lanes behind a session', () => {
  test('CUE-19 holding says what to do at once, then a word every two minutes for half an hour', () => {
    const plan = planHolding(REAL_VOICE);
    expect(plan.total).toBe(30 * 60_000);
    const [first, ...later] = listed(plan);
    expect(first).toEqual([0.48, 'start', 'Holding. Go on when you are ready.']);
    expect(later).toEqual(
      Array.from({ length: 14 }, (_, i) => [(i + 1) * 120, 'reminder', 'Still holding.']),
    );
  });

  test('CUE-19 one minute more says so, and then is quiet for exactly a minute', () => {
    const plan = planOneMore(REAL_VOICE);
    expect(plan.cues.map(({ kind, text }) => [kind, text])).toEqual([
      ['start', 'One minute more.'],
    ]);
    expect(plan.cues[0]?.at).toBeLessThan(1000);
    expect(plan.total - (plan.cues[0]?.end ?? 0)).toBe(60_000);
  });

  test('CUE-19 the cool-down is five minutes of easy walk with its countdown and end', () => {
    expect(listed(planCoolDown(options))).toEqual([
      [0, 'start', 'Cool-down. Easy walk. Five minutes.'],
      [12, 'start', 'Easy walk.'],
      [90, 'reminder', 'Stand tall, eyes on the path ahead.'],
      [150, 'halfway', 'Halfway.'],
      [240, 'remaining', 'One minute.'],
      [290, 'remaining', 'Ten seconds.'],
      [297, 'countdown', '3, 2, 1'],
      [300.7, 'finish', 'That is the end. You are done for today.'],
    ]);
  });

  test('CUE-19 the cool-down opens with the falling tone and obeys the level of talk', () => {
    const plan = planCoolDown({ ...options, talk: 'few' });
    expect(plan.cues[0]?.clips[0]).toEqual({ at: 0, clip: 'tone.fall' });
    expect(plan.cues.map(({ text }) => text)).toEqual([
      'Easy walk. Five minutes.',
      'Easy walk.',
      '3, 2, 1',
      'That is the end. You are done for today.',
    ]);
  });

  test('CUE-19 the pocket check is two minutes with words at uneven times', () => {
    const plan = planPocketCheck(REAL_VOICE);
    expect(plan.total).toBe(120_000);
    const times = plan.cues.map(({ at }) => at / 1000);
    expect(times).toEqual([0, 20, 40, 75, 117, 120.7]);
    expect(plan.cues.map(({ kind }) => kind)).toEqual([
      'start',
      'reminder',
      'reminder',
      'reminder',
      'countdown',
      'finish',
    ]);
    expect(plan.cues[0]?.clips[0]?.clip).toBe('tone.wake');
    expect(plan.cues[4]?.clips.at(-1)).toEqual({ at: 120_000, clip: 'tone.fall' });
  });

  test('CUE-19 of every lane all belongs to its only segment, and the cool-down is easy walk in effort too', () => {
    const plans = [
      planHolding(REAL_VOICE),
      planOneMore(REAL_VOICE),
      planCoolDown(options),
      planPocketCheck(REAL_VOICE),
      planSample(REAL_VOICE),
    ];
    const segments = plans.flatMap(({ cues }) => cues.map(({ segment }) => segment));
    expect(new Set(segments)).toEqual(new Set([0]));
    expect(COOL_DOWN.segments.map(({ effort }) => effort)).toEqual([DEFAULT_EFFORT['easy walk']]);
  });

  test('CUE-19 a cue to try sounds like a change: the rising tone, then words', () => {
    const { cues, total } = planSample(REAL_VOICE);
    expect(cues.map(({ kind, text }) => [kind, text])).toEqual([
      ['change', 'This is how it will sound. Run. One minute.'],
    ]);
    expect(cues[0]?.clips.slice(0, 2)).toEqual([
      { at: 0, clip: 'tone.rise' },
      { at: 700, clip: 'phrase.sample' },
    ]);
    expect(total).toBeGreaterThan(cues[0]?.end ?? 0);
  });

  test.each([
    ['the voice that is shipped', REAL_VOICE],
    ['a slow voice', evenVoice(2000)],
  ])('CUE-14 no two sounds of a lane overlap with %s', (_, lengths) => {
    const plans = [
      planHolding(lengths),
      planOneMore(lengths),
      planCoolDown({ ...options, lengths }),
      planPocketCheck(lengths),
      planSample(lengths),
    ];
    for (const { cues } of plans) {
      const sounds = soundsOf(cues, lengths);
      expect(sounds.filter(({ at }, i) => at < (sounds[i - 1]?.end ?? 0))).toEqual([]);
    }
  });
});
