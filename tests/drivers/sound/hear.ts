import type { CuePlan, PlacedClip } from '../../../src/domain/cues/cue.ts';
import type { ClipId } from '../../../src/domain/cues/vocabulary.ts';
import { clipsOf } from '../../../src/domain/track/placement.ts';
import { locate, type Pattern } from './correlate.ts';
import { RATE } from './decode.ts';
import { loudestWindow, type Samples, samplesIn } from './level.ts';
import { findTones, type Tone } from './tones.ts';

export interface Heard {
  readonly clip: ClipId;
  readonly plannedMs: number;
  /** Heard minus planned. */
  readonly lateMs: number;
  /** How alike the sound is to the clip's own, 0 to 1. */
  readonly match: number;
}

/** How far around its planned time a spoken clip is looked for. */
const AROUND_MS = 1500;

/** Every spoken clip of a plan, looked for in the decoded sound by its own sound. */
export function hearWords(
  samples: Samples,
  plan: CuePlan,
  sounds: ReadonlyMap<ClipId, Pattern>,
): Heard[] {
  const words = clipsOf(plan).filter(({ clip }) => !isTone(clip));
  return words.map(({ clip, at }) => {
    const pattern = sounds.get(clip);
    if (pattern === undefined) throw new Error(`no sound of ${clip}`);
    const [before, after] = reach(words, { clip, at });
    const found = locate(samples, pattern, samplesIn(at - before), samplesIn(at + after));
    return { clip, plannedMs: at, lateMs: (found.at * 1000) / RATE - at, match: found.match };
  });
}

/** A word said twice within the reach is looked for in its own half of the way between. */
function reach(words: readonly PlacedClip[], { clip, at }: PlacedClip): [number, number] {
  const others = words.filter((word) => word.clip === clip && word.at !== at);
  const halfWay = (sign: 1 | -1) =>
    Math.min(
      AROUND_MS,
      ...others.map((other) => (sign * (other.at - at)) / 2).filter((gap) => gap > 0),
    );
  return [halfWay(-1), halfWay(1)];
}

/** Tones heard, tones planned, and each planned one's distance from the one that was heard. */
export function hearTones(
  samples: Samples,
  plan: CuePlan,
): { heard: Tone[]; planned: PlacedClip[]; lateMs: number[] } {
  const planned = clipsOf(plan).filter(({ clip }) => isTone(clip));
  const heard = findTones(samples);
  const lateMs = planned.map(({ at }, i) => ((heard[i]?.start ?? 0) * 1000) / RATE - at);
  return { heard, planned, lateMs };
}

/** The loudest 50 ms of everything between planned sounds, `marginMs` away from each. */
export function loudestBetween(
  samples: Samples,
  plan: CuePlan,
  lengthOf: (clip: ClipId) => number,
  marginMs: number,
): { db: number; atMs: number } {
  let loudest = { db: Number.NEGATIVE_INFINITY, at: 0 };
  let from = 0;
  const ends = [...clipsOf(plan), { at: (samples.length * 1000) / RATE + marginMs, clip: '' }];
  for (const { at, clip } of ends) {
    const found = loudestWindow(samples, samplesIn(from), samplesIn(at - marginMs));
    if (found.db > loudest.db) loudest = found;
    from = clip === '' ? from : at + lengthOf(clip) + marginMs;
  }
  return { db: loudest.db, atMs: (loudest.at * 1000) / RATE };
}

const isTone = (clip: ClipId): boolean => clip.startsWith('tone.');
