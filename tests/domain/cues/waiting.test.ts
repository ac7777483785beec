import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CuePlan } from '../../../src/domain/cues/cue.ts';
import { planWaiting } from '../../../src/domain/cues/waiting.ts';
import { leadInOf } from '../../../src/domain/track/compose.ts';
import { FRAME_MS, ms } from '../../../src/domain/units.ts';
import { anyVoice, evenVoice, REAL_VOICE, soundsOf } from './voices.ts';

/** Seconds before the start, and what is said. */
const listed = ({ cues, total }: CuePlan) =>
  cues.map(({ at, text }) => [(total - at) / 1000, text]);
const anyAhead = fc.integer({ min: 1, max: 1_800_000 }).map(ms);

describe('what is heard while people wait', () => {
  test('WAIT-6 says at once that the wait has begun, then the time left, and counts in', () => {
    const plan = planWaiting(ms(395_000), REAL_VOICE);
    expect(plan.total).toBe(8 * 60_000);
    const [first, ...later] = listed(plan);
    expect(first?.[0]).toBe(394.52);
    expect(first?.[1]).toMatch(/^Waiting for the start\. Six minutes thirty-five to go\.$/);
    expect(later.map(([left]) => left)).toEqual([360, 300, 240, 180, 120, 60, 10, 3]);
    expect(later.map(([, text]) => /to go/.test(`${text}`))).toEqual([
      ...[false, true, false, false, true, true],
      ...[false, false],
    ]);
    expect(later.at(-2)?.[1]).toBe('Ten seconds.');
    expect(later.at(-1)?.[1]).toBe('3, 2, 1');
  });

  test('WAIT-6 what is said is of the time left, what is not is a tick, and all of it belongs to the start', () => {
    const { cues } = planWaiting(ms(395_000), REAL_VOICE);
    expect(cues.map(({ kind }) => kind)).toEqual([
      'start',
      ...['reminder', 'remaining', 'reminder', 'reminder', 'remaining', 'remaining'],
      'remaining',
      'countdown',
    ]);
    expect(cues.map(({ segment }) => segment)).toEqual(cues.map(() => 0));
    expect(cues.filter(({ kind }) => kind === 'reminder').flatMap(({ clips }) => clips)).toEqual(
      [360, 240, 180].map((left) => ({ at: 480_000 - left * 1000, clip: 'tone.tick' })),
    );
  });

  test('WAIT-6 is whole minutes, a frame long to the last, with room for a clock that is fast', () => {
    fc.assert(
      fc.property(anyAhead, anyVoice, (ahead, lengths) => {
        const { total } = planWaiting(ahead, lengths);
        expect(total % 60_000).toBe(0);
        expect(total % FRAME_MS).toBe(0);
        expect(total - ahead).toBeGreaterThanOrEqual(60_000);
        expect(leadInOf({ cues: [], total }).length).toBe(total);
      }),
    );
  });

  test('WAIT-6 no two sounds overlap, nothing is heard before the tap or into the start', () => {
    fc.assert(
      fc.property(anyAhead, anyVoice, (ahead, lengths) => {
        const plan = planWaiting(ahead, lengths);
        const sounds = soundsOf(plan.cues, lengths);
        for (const [i, sound] of sounds.entries()) {
          expect(sound.at).toBeGreaterThanOrEqual(sounds[i - 1]?.end ?? plan.total - ahead);
          expect(sound.end).toBeLessThanOrEqual(plan.total);
        }
      }),
    );
  });

  test('WAIT-6 the time that is said is true, and the last ten seconds are as always', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60_001, max: 1_800_000 }).map(ms), (ahead) => {
        const plan = planWaiting(ahead, REAL_VOICE);
        const lefts = listed(plan).map(([left]) => left);
        expect(lefts.slice(-2)).toEqual([10, 3]);
        // About a minute without a sound at most: a mark that the first words reach into is left out.
        const times = [plan.total - ahead, ...plan.cues.map(({ at }) => at)];
        const apart = times.map((at, i) => at - (times[i - 1] ?? at));
        expect(Math.max(...apart)).toBeLessThanOrEqual(72_000);
      }),
    );
  });

  test('WAIT-6 that the wait has begun is said where a second is left before "ten seconds"', () => {
    const first = (ahead: number) =>
      planWaiting(ms(ahead), evenVoice(500)).cues.find(({ kind }) => kind === 'start');
    const least = Array.from({ length: 20_000 }, (_, n) => 10_000 + n).find(first) ?? 0;
    const { total } = planWaiting(ms(least), evenVoice(500));
    expect(first(least)?.end).toBe(total - 10_000 - 1000);
    expect(first(least + 1)).toBeDefined();
  });

  test('WAIT-6 a mark within a second of the first words is left out', () => {
    const quiet = Array.from({ length: 600 }, (_, n) => {
      const [first, next] = planWaiting(ms(120_000 + n * 100), evenVoice(500)).cues;
      return (next?.at ?? 0) - (first?.end ?? 0);
    });
    expect(Math.min(...quiet)).toBeGreaterThanOrEqual(1000);
    expect(Math.min(...quiet)).toBeLessThan(1100);
  });

  test('WAIT-6 there is a clip for all that is heard, however near the start the tap is', () => {
    const heard = (ahead: number) => planWaiting(ms(ahead), REAL_VOICE).cues.length > 0;
    const taps = Array.from({ length: 20_000 }, (_, n) => n + 1);
    // Three short tones, and the half second that a seek may cost.
    expect(taps.filter(heard)).toEqual(taps.filter((ahead) => ahead >= 3480));
  });

  test('WAIT-6 nothing is said in the half second after the tap: a seek may cost it', () => {
    const said = (ahead: number) => listed(planWaiting(ms(ahead), REAL_VOICE));
    expect(said(10_480)).toEqual([
      [10, 'Ten seconds.'],
      [3, '3, 2, 1'],
    ]);
    expect(said(10_479)).toEqual([[3, '3, 2, 1']]);
  });
});
