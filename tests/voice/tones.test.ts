import { describe, expect, it } from 'vitest';
import { decodeMpg123, RATE } from '../drivers/sound/decode.ts';
import { levelDb } from '../drivers/sound/level.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/** Frequency of a stretch by counting how often it rises through zero, between first and last. */
function hzOf(samples: Float32Array): number {
  const rises: number[] = [];
  for (let i = 1; i < samples.length; i += 1) {
    const [a = 0, b = 0] = [samples[i - 1], samples[i]];
    if (a < 0 && b >= 0) rises.push(i - 1 + a / (a - b));
  }
  const [first = 0, last = 0] = [rises[0], rises.at(-1)];
  return ((rises.length - 1) * RATE) / (last - first);
}

describe('tones, decoded', async () => {
  const { manifest, audio } = voicePack();
  const samples = await decodeMpg123(audio);
  const tone = (id: string): Float32Array => {
    const { firstFrame = 0, onsetMs = 0, lengthMs = 0 } = manifest.clips[id] ?? {};
    const start = (firstFrame * 24 + onsetMs) * (RATE / 1000);
    return samples.subarray(start, start + lengthMs * (RATE / 1000));
  };
  /** Frequencies of stretches of 40 ms, the fades left out. */
  const glide = (id: string): number[] => {
    const sound = tone(id);
    const step = 0.04 * RATE;
    const count = Math.floor((sound.length - 0.02 * RATE) / step);
    return Array.from({ length: count }, (_, i) =>
      hzOf(sound.subarray(0.01 * RATE + i * step, 0.01 * RATE + (i + 1) * step)),
    );
  };
  const all = ['tone.wake', 'tone.short', 'tone.rise', 'tone.fall', 'tone.level', 'tone.tick'];

  it.each(all)('VOICE-5 %s stays between 500 and 1,200 Hz', (id) => {
    for (const hz of glide(id)) {
      expect(hz).toBeGreaterThan(500);
      expect(hz).toBeLessThan(1200);
    }
  });

  it('VOICE-5 one rises through most of an octave, one falls, the others are level', () => {
    const ratio = (id: string): number => (glide(id).at(-1) ?? 0) / (glide(id)[0] ?? 1);
    expect(ratio('tone.rise')).toBeGreaterThan(1.7);
    expect(ratio('tone.fall')).toBeLessThan(1 / 1.7);
    for (const id of ['tone.wake', 'tone.short', 'tone.level'])
      expect(Math.abs(ratio(id) - 1)).toBeLessThan(0.01);
  });

  it.each(all)('VOICE-5 %s lasts as long as it should', (id) => {
    const lengthMs = manifest.clips[id]?.lengthMs ?? 0;
    const expected = id === 'tone.short' ? 120 : id === 'tone.tick' ? 60 : 600;
    expect(Math.abs(lengthMs - expected)).toBeLessThanOrEqual(8);
  });

  it.each(all)('VOICE-5 %s starts on its frame: 48 ms after the first, within 2 ms', (id) => {
    expect(Math.abs((manifest.clips[id]?.onsetMs ?? 0) - 48)).toBeLessThanOrEqual(2);
  });

  /** The pieces of a call, from each silence to the next: how long and how high. */
  const piecesOf = (id: string): { ms: number; hz: number }[] => {
    const sound = tone(id);
    const step = 0.005 * RATE;
    const found: { ms: number; hz: number }[] = [];
    let from: number | undefined;
    for (let at = 0; at <= sound.length; at += step) {
      const isSound = at < sound.length && levelDb(sound, at, at + step) > -30;
      if (isSound) from ??= at;
      else if (from !== undefined) {
        const middle = sound.subarray(from + 2 * step, at - 2 * step);
        found.push({ ms: ((at - from) * 1000) / RATE, hz: hzOf(middle) });
        from = undefined;
      }
    }
    return found;
  };

  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'VOICE-5 the call of group %i is a note and its own number of pips',
    (group) => {
      const [note, ...pips] = piecesOf(`tone.group-${group}`);
      const isFirst = group <= 4;
      expect(pips.length).toBe(isFirst ? group : group - 4);
      expect(Math.abs((note?.ms ?? 0) - 160)).toBeLessThanOrEqual(20);
      expect(Math.abs((note?.hz ?? 0) - (isFirst ? 1000 : 600))).toBeLessThan(20);
      for (const pip of pips) {
        expect(Math.abs(pip.ms - 70)).toBeLessThanOrEqual(20);
        expect(Math.abs(pip.hz - (isFirst ? 600 : 1000))).toBeLessThan(20);
      }
    },
  );

  it.each(['tone.wake', 'tone.short', 'tone.level'])(
    'VOICE-5 %s is clean: a sine holds all but a hundredth of its power',
    (id) => {
      const sound = tone(id).subarray(0.02 * RATE, 0.08 * RATE);
      const hz = hzOf(sound);
      const part = (wave: (x: number) => number): number =>
        sound.reduce((sum, s, i) => sum + s * wave((2 * Math.PI * hz * i) / RATE), 0);
      const power = (2 * (part(Math.sin) ** 2 + part(Math.cos) ** 2)) / sound.length ** 2;
      const whole = 10 ** (levelDb(sound, 0, sound.length) / 10);
      expect(power / whole).toBeGreaterThan(0.99);
    },
  );
});
