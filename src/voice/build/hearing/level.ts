/** Time constant of the envelope, hangover, and margin between threshold and level (ITU-T P.56). */
const TIME_CONSTANT_S = 0.03;
const HANGOVER_S = 0.2;
const MARGIN_DB = 15.9;
const THRESHOLDS = 15;

const db = (power: number): number => 10 * Math.log10(Math.max(power, 1e-20));

/** For each threshold (halving from 1), the samples at which speech counts as active. */
function activity(envelope: Float64Array, rate: number): number[] {
  const hangover = Math.round(HANGOVER_S * rate);
  return Array.from({ length: THRESHOLDS }, (_, k) => {
    const threshold = 2 ** -(k + 1);
    let active = 0;
    let since = hangover;
    for (const e of envelope) {
      since = e >= threshold ? 0 : since + 1;
      if (since < hangover) active += 1;
    }
    return active;
  });
}

function envelopeOf(samples: Float64Array, rate: number): Float64Array {
  const g = Math.exp(-1 / (rate * TIME_CONSTANT_S));
  let p = 0;
  let q = 0;
  return samples.map((s) => {
    p = g * p + (1 - g) * Math.abs(s);
    q = g * q + (1 - g) * p;
    return q;
  });
}

/**
 * Active speech level in dB of full scale (mean square), by the method of ITU-T P.56: the level
 * over the time in which an envelope, with hangover, is within 15.9 dB of that very level.
 * Interpolated between thresholds in 6 dB steps (constants of the recommendation, from memory).
 */
export function activeLevelDb(samples: Float64Array, rate: number): number {
  const energy = samples.reduce((sum, s) => sum + s * s, 0);
  const active = activity(envelopeOf(samples, rate), rate);
  let last: { level: number; gap: number } | undefined;
  for (let k = 0; k < THRESHOLDS; k += 1) {
    const count = active[k] ?? 0;
    if (count === 0) continue;
    const level = db(energy / count);
    const gap = level - 20 * Math.log10(2 ** -(k + 1)) - MARGIN_DB;
    if (gap >= 0) {
      if (last === undefined) return level;
      const part = last.gap / (last.gap - gap);
      return last.level + part * (level - last.level);
    }
    last = { level, gap };
  }
  return last?.level ?? db(energy / samples.length);
}
