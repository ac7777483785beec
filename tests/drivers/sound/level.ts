import { RATE } from './decode.ts';

/** Samples as a decoder gives them: whole numbers of 16 bits, or fractions of full scale. */
export type Samples = Int16Array | Float32Array;

export const fullScale = (samples: Samples): number => (samples instanceof Int16Array ? 32_768 : 1);

export const samplesIn = (ms: number): number => Math.round((ms * RATE) / 1000);

/** Level of a stretch in dB below full scale (root of the mean square); -Infinity for nothing. */
export function levelDb(samples: Samples, from: number, to: number): number {
  const [start, end] = [Math.max(0, from), Math.min(samples.length, to)];
  let sum = 0;
  for (let i = start; i < end; i++) sum += (samples[i] ?? 0) ** 2;
  return 10 * Math.log10(sum / Math.max(1, end - start) / fullScale(samples) ** 2);
}

/** Highest single sample of a stretch in dB below full scale. */
export function peakDb(samples: Samples, from: number, to: number): number {
  const [start, end] = [Math.max(0, from), Math.min(samples.length, to)];
  let peak = 0;
  for (let i = start; i < end; i++) peak = Math.max(peak, Math.abs(samples[i] ?? 0));
  return 20 * Math.log10(peak / fullScale(samples));
}

/** Loudest window of a stretch, in dB, and where it begins. */
export function loudestWindow(
  samples: Samples,
  from: number,
  to: number,
  windowMs = 50,
): { db: number; at: number } {
  const window = samplesIn(windowMs);
  let loudest = { db: Number.NEGATIVE_INFINITY, at: from };
  for (let at = from; at + window <= to; at += window) {
    const db = levelDb(samples, at, at + window);
    if (db > loudest.db) loudest = { db, at };
  }
  return loudest;
}

/**
 * First and last sound of a recording: where windows of 2 ms rise above `belowDb` under the
 * loudest of them, in samples.
 */
export function soundIn(samples: Samples, belowDb: number): { start: number; end: number } {
  const window = samplesIn(2);
  const levels: number[] = [];
  for (let at = 0; at + window <= samples.length; at += window / 2) {
    levels.push(levelDb(samples, at, at + window));
  }
  const floor = Math.max(...levels) - belowDb;
  const heard = (db: number) => db > floor;
  return {
    start: (levels.findIndex(heard) * window) / 2,
    end: ((levels.findLastIndex(heard) + 2) * window) / 2,
  };
}
