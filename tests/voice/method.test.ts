import { describe, expect, it } from 'vitest';
import { activeLevelDb } from '../../src/voice/build/hearing/level.ts';
import { pinkNoise } from '../../src/voice/build/hearing/noise.ts';
import { grammar, inNoise } from '../../src/voice/build/hearing/recognise.ts';

const RATE = 16_000;
const powerDb = (samples: Float64Array): number =>
  10 * Math.log10(samples.reduce((sum, s) => sum + s * s, 0) / samples.length);

/** Power near a frequency: a Goertzel filter over many short windows. */
function bandDb(samples: Float64Array, hz: number): number {
  const window = 1600;
  const k = 2 * Math.cos((2 * Math.PI * hz) / RATE);
  let power = 0;
  for (let at = 0; at + window <= samples.length; at += window) {
    let [a, b] = [0, 0];
    for (let i = 0; i < window; i += 1) [a, b] = [(samples[at + i] ?? 0) + k * a - b, a];
    power += a * a + b * b - k * a * b;
  }
  return 10 * Math.log10(power);
}

describe('how the recogniser is asked', () => {
  it('VOICE-10 pink noise falls by 3 dB an octave, and is another for another seed', () => {
    const noise = pinkNoise(60 * RATE, 1);
    for (const hz of [125, 250, 500, 1000, 2000])
      expect(Math.abs(bandDb(noise, hz) - bandDb(noise, 2 * hz) - 3.01), `${hz} Hz`).toBeLessThan(
        1,
      );
    expect(pinkNoise(100, 1)).toEqual(pinkNoise(100, 1));
    expect(pinkNoise(100, 1)).not.toEqual(pinkNoise(100, 2));
    expect(powerDb(noise)).toBeCloseTo(0, 6);
  });

  it('VOICE-10 the active level of a sound is its own, however much silence is around it', () => {
    const sine = Float64Array.from({ length: RATE }, (_, i) => 0.1 * Math.sin(0.3 * i));
    const apart = new Float64Array(9 * RATE);
    for (const second of [1, 4, 7]) apart.set(sine, second * RATE);
    expect(Math.abs(activeLevelDb(sine, RATE) - powerDb(sine))).toBeLessThan(0.2);
    // Hangover counts 0.2 s after each of three seconds: 10 log10(1.2) = 0.8 dB, and the envelope's own fall a little more.
    expect(activeLevelDb(apart, RATE) - powerDb(sine)).toBeLessThan(0);
    expect(activeLevelDb(apart, RATE) - powerDb(sine)).toBeGreaterThan(-1.2);
    expect(powerDb(apart) - powerDb(sine)).toBeLessThan(-4);
  });

  it('VOICE-10 noise is added at the level that is asked for', () => {
    const speech = Float64Array.from({ length: 4 * RATE }, (_, i) => 0.1 * Math.sin(0.3 * i));
    const noise = inNoise(speech, 5, 3).map((s, i) => s - 0.25 * (speech[i] ?? 0));
    const apart = activeLevelDb(speech, RATE) + 20 * Math.log10(0.25) - powerDb(noise);
    expect(apart).toBeCloseTo(5, 6);
  });

  it('VOICE-10 the grammar has every activity and about 90 durations', () => {
    const [, activities = '', durations = ''] =
      /<activity> = (.*);\n<duration> = (.*);/.exec(grammar()) ?? [];
    expect(activities.split(' | ')).toHaveLength(12);
    expect(durations.split(' | ').length).toBeGreaterThanOrEqual(90);
    for (const said of [
      'one minute thirty',
      'fifteen minutes',
      'fifty minutes',
      'two minutes',
      'ten minutes',
    ])
      expect(durations.split(' | ')).toContain(said);
  });
});
