import { RATE } from './tools.ts';

/** A clip is looped to at least this long, so that every part of it fills whole gating blocks. */
export const LOOP_S = 4;

type Biquad = readonly [b0: number, b1: number, b2: number, a1: number, a2: number];

/**
 * The two filters of ITU-R BS.1770's K-weighting for any sampling rate: a shelf for the head
 * and a high-pass. The recommendation prints coefficients for 48 kHz; the corner frequencies and
 * qualities behind them are the ones in common use (from memory; the tests compare with ffmpeg).
 */
function kWeighting(rate: number): readonly [Biquad, Biquad] {
  const shelf = { k: Math.tan((Math.PI * 1681.974450955533) / rate), q: 0.7071752369554196 };
  const high = 10 ** (3.999843853973347 / 20);
  const band = high ** 0.4996667741545416;
  const over = 1 + shelf.k / shelf.q + shelf.k ** 2;
  const pass = { k: Math.tan((Math.PI * 38.13547087602444) / rate), q: 0.5003270373238773 };
  const under = 1 + pass.k / pass.q + pass.k ** 2;
  return [
    [
      (high + (band * shelf.k) / shelf.q + shelf.k ** 2) / over,
      (2 * (shelf.k ** 2 - high)) / over,
      (high - (band * shelf.k) / shelf.q + shelf.k ** 2) / over,
      (2 * (shelf.k ** 2 - 1)) / over,
      (1 - shelf.k / shelf.q + shelf.k ** 2) / over,
    ],
    [1, -2, 1, (2 * (pass.k ** 2 - 1)) / under, (1 - pass.k / pass.q + pass.k ** 2) / under],
  ];
}

function filter(samples: Float64Array, [b0, b1, b2, a1, a2]: Biquad): Float64Array {
  let x1 = 0;
  let x2 = 0;
  let y1 = 0;
  let y2 = 0;
  return samples.map((x) => {
    const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    return y;
  });
}

const LUFS_OFFSET = -0.691;
const lufsOf = (power: number): number => LUFS_OFFSET + 10 * Math.log10(power);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean squares of blocks of 400 ms, one every 100 ms. */
function blocksOf(weighted: Float64Array): number[] {
  const [block, step] = [0.4 * RATE, 0.1 * RATE];
  const count = Math.floor((weighted.length - block) / step) + 1;
  return Array.from({ length: count }, (_, i) => {
    const part = weighted.subarray(i * step, i * step + block);
    return part.reduce((sum, s) => sum + s * s, 0) / block;
  });
}

/** A clip repeated back to back until it lasts at least {@link LOOP_S}. */
export function looped(samples: Float64Array): Float64Array {
  const times = Math.max(1, Math.ceil((LOOP_S * RATE) / samples.length));
  const loop = new Float64Array(times * samples.length);
  for (let i = 0; i < times; i += 1) loop.set(samples, i * samples.length);
  return loop;
}

/**
 * Loudness of a clip in LUFS of one channel by ITU-R BS.1770-4, both gates included. The
 * recommendation's blocks last 400 ms, longer than many a word, so the clip is measured looped:
 * each part of it has the same weight.
 */
export function loudnessOf(samples: Float64Array): number {
  const weighted = kWeighting(RATE).reduce(filter, looped(samples));
  const loud = blocksOf(weighted).filter((power) => lufsOf(power) > -70);
  const gate = lufsOf(mean(loud)) - 10;
  return lufsOf(mean(loud.filter((power) => lufsOf(power) > gate)));
}
