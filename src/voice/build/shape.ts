import type { Call, Tone } from '../../domain/cues/vocabulary.ts';
import { loudnessOf } from './loudness.ts';
import type { Spoken } from './speak.ts';
import { RATE } from './tools.ts';

/** Samples in some seconds of sound, as the engine gives it. */
export const samplesIn = (seconds: number): number => Math.round(seconds * RATE);
const gainOf = (db: number): number => 10 ** (db / 20);

/** Sound is looked for in windows of 2 ms. */
const WINDOW = samplesIn(0.002);

/**
 * From the first to the last sound louder than a threshold below the loudest, as sample
 * indexes (start included, end excluded).
 */
export function soundIn(samples: Float64Array, belowDb: number): { start: number; end: number } {
  const windows = Math.ceil(samples.length / WINDOW);
  const power = Array.from({ length: windows }, (_, w) => {
    const part = samples.subarray(w * WINDOW, (w + 1) * WINDOW);
    return Math.sqrt(part.reduce((sum, s) => sum + s * s, 0) / part.length);
  });
  const floor = Math.max(...power) * gainOf(-belowDb);
  const first = power.findIndex((p) => p > floor);
  const last = power.findLastIndex((p) => p > floor);
  return { start: first * WINDOW, end: Math.min(samples.length, (last + 1) * WINDOW) };
}

/** Raises the first samples from nothing and lowers the last ones to it, so that no join clicks. */
export function fade(samples: Float64Array, inS: number, outS: number): Float64Array {
  const rise = (i: number, n: number): number =>
    i >= n ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * i) / n);
  const last = samples.length - 1;
  return samples.map((s, i) => s * rise(i, samplesIn(inS)) * rise(last - i, samplesIn(outS)));
}

/** Sound this far below a word's loudest begins it; it ends later, with the release of a "t". */
const BEGINS_DB = 36;
const ENDS_DB = 46;

/**
 * Cuts the silence around speech at the engine's own marks of the first and last phone, with
 * a margin, so that no sound is clipped; then what is silent inside them, such as the closure
 * before a "t".
 */
export function trim({ samples, from, to }: Spoken): Float64Array {
  const spoken = samples.subarray(samplesIn(Math.max(0, from - 0.01)), samplesIn(to + 0.02));
  const { start } = soundIn(spoken, BEGINS_DB);
  const { end } = soundIn(spoken, ENDS_DB);
  const cut = spoken.slice(Math.max(0, start - samplesIn(0.001)), end + samplesIn(0.01));
  return fade(cut, 0.001, 0.01);
}

/**
 * Holds peaks below a ceiling by a gain that falls ahead of them and recovers after: the least
 * gain of the neighbouring milliseconds, smoothed.
 */
export function limit(samples: Float64Array, ceilingDb: number): Float64Array {
  const ceiling = gainOf(ceilingDb);
  if (samples.every((s) => Math.abs(s) <= ceiling)) return samples;
  const reach = samplesIn(0.002);
  const around = (values: Float64Array, i: number): Float64Array =>
    values.subarray(Math.max(0, i - reach), i + reach + 1);
  const least = (values: Float64Array): number => {
    let low = 1;
    for (const value of values) if (value < low) low = value;
    return low;
  };
  const mean = (values: Float64Array): number => {
    let sum = 0;
    for (const value of values) sum += value;
    return sum / values.length;
  };
  const needed = samples.map((s) => Math.min(1, ceiling / Math.max(1e-9, Math.abs(s))));
  const held = needed.map((_, i) => least(around(needed, i)));
  return samples.map((s, i) => s * mean(around(held, i)));
}

/** Brings a clip to a loudness, with peaks held; several times over, since holding them costs some. */
export function level(samples: Float64Array, lufs: number, ceilingDb: number): Float64Array {
  let gainDb = 0;
  let levelled = samples;
  for (let turn = 0; turn < 5; turn += 1) {
    const { start, end } = soundIn(levelled, BEGINS_DB);
    gainDb += lufs - loudnessOf(levelled.subarray(start, end));
    const gain = gainOf(gainDb);
    levelled = limit(
      samples.map((s) => s * gain),
      ceilingDb,
    );
  }
  return levelled;
}

/** A tone of one loudness throughout, its frequency gliding by equal steps of pitch. */
export function makeTone({ seconds, fromHz, toHz }: Tone): Float64Array {
  const length = samplesIn(seconds);
  let phase = 0;
  const wave = Float64Array.from({ length }, (_, i) => {
    phase += (2 * Math.PI * fromHz * (toHz / fromHz) ** (i / length)) / RATE;
    return 0.25 * Math.sin(phase);
  });
  return fade(wave, 0.004, 0.012);
}

/** A note and its pips, with quiet between them. */
export function makeCall({ note, pip, pips, restSeconds }: Call): Float64Array {
  const [first, other] = [makeTone(note), makeTone(pip)];
  const step = samplesIn(restSeconds) + other.length;
  const sound = new Float64Array(first.length + pips * step);
  sound.set(first);
  for (let i = 1; i <= pips; i += 1) sound.set(other, first.length + i * step - other.length);
  return sound;
}

/** Noise of a level in dBFS, dull rather than hissing, the same for the same seed. */
export function makeQuiet(seconds: number, levelDb: number, seed: number): Float64Array {
  let state = seed;
  let low = 0;
  const noise = Float64Array.from({ length: samplesIn(seconds) }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    low += 0.3 * (state / 2 ** 31 - 1 - low);
    return low;
  });
  const rms = Math.sqrt(noise.reduce((sum, s) => sum + s * s, 0) / noise.length);
  return noise.map((s) => (s * gainOf(levelDb)) / rms);
}
