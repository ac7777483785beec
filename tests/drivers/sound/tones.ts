import { RATE } from './decode.ts';
import { fullScale, levelDb, type Samples, samplesIn } from './level.ts';

export interface Tone {
  /** First sound and last, in samples. */
  readonly start: number;
  readonly end: number;
  readonly fromHz: number;
  readonly toHz: number;
}

const HOP = samplesIn(5);
const WINDOW = samplesIn(10);
const LEAST_DB = -40;
const LEAST_MS = 80;
/** Share of a window's energy that a single sine may leave unexplained. */
const MOST_RESIDUE = 0.003;

/**
 * Every tone in a recording, found without knowing where any should be.
 *
 * A sine obeys x[n] + x[n-2] = a x[n-1], with a = 2 cos(2 pi f / rate). Where the best `a` leaves
 * next to nothing unexplained for long enough, between 450 and 1,300 Hz, a tone is heard. Speech
 * never holds one sine so long; noise never at all.
 */
export function findTones(samples: Samples): Tone[] {
  const tones: Tone[] = [];
  let run: { at: number; hz: number }[] = [];
  for (let at = 0; at + WINDOW <= samples.length; at += HOP) {
    const hz = sineIn(samples, at, at + WINDOW);
    if (hz !== undefined) run.push({ at, hz });
    if ((hz === undefined || at + HOP + WINDOW > samples.length) && run.length > 0) {
      if (run.length * 5 >= LEAST_MS) tones.push(outline(samples, run));
      run = [];
    }
  }
  return tones;
}

function sineIn(samples: Samples, from: number, to: number): number | undefined {
  const scale = fullScale(samples);
  let [cross, middle, sides] = [0, 0, 0];
  for (let n = from + 2; n < to; n++) {
    const here = (samples[n - 1] ?? 0) / scale;
    const around = ((samples[n] ?? 0) + (samples[n - 2] ?? 0)) / scale;
    cross += around * here;
    middle += here * here;
    sides += around * around;
  }
  if (middle / (to - from) < 10 ** (LEAST_DB / 10)) return undefined;
  const a = cross / middle;
  const hz = (Math.acos(Math.max(-1, Math.min(1, a / 2))) * RATE) / (2 * Math.PI);
  const residue = (sides - a * cross) / middle;
  return residue < MOST_RESIDUE && hz > 450 && hz < 1300 ? hz : undefined;
}

/** Where a tone's level first and last stands within 12 dB of its own, to the half millisecond. */
function outline(samples: Samples, run: readonly { at: number; hz: number }[]): Tone {
  const first = run[0] ?? { at: 0, hz: 0 };
  const last = run.at(-1) ?? first;
  const own = levelDb(samples, first.at, last.at + WINDOW) - 12;
  const [step, window] = [samplesIn(0.5), samplesIn(2)];
  let start = first.at - samplesIn(60);
  while (levelDb(samples, start, start + window) < own) start += step;
  let end = last.at + WINDOW + samplesIn(60);
  while (levelDb(samples, end - window, end) < own) end -= step;
  return { start: Math.max(0, start), end, fromHz: first.hz, toHz: last.hz };
}
