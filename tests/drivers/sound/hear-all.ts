import type { CuePlan } from '../../../src/domain/cues/cue.ts';
import type { ClipId } from '../../../src/domain/cues/vocabulary.ts';
import { clipsOf } from '../../../src/domain/track/placement.ts';
import { locate, type Pattern } from './correlate.ts';
import { RATE } from './decode.ts';
import { type Heard, hearTones, hearWords } from './hear.ts';
import { type Samples, samplesIn } from './level.ts';

/** How far around its planned time a call or a tick is looked for. */
const AROUND_MS = 200;

/** What a decoder gives of a track in which several groups are led. */
export interface HeardAll {
  readonly words: readonly Heard[];
  /** Calls of groups and ticks, each by its own sound. */
  readonly calls: readonly Heard[];
  /** Tones that a detector finds without knowing of any; a call is the tone that it begins with. */
  readonly tones: {
    readonly found: number;
    readonly planned: number;
    readonly lateMs: number[];
    /** Where each begins, in milliseconds. */
    readonly starts: number[];
  };
}

/**
 * Every sound of a plan, looked for in the decoded track.
 *
 * @param earlyMs how much the decoder has cut off the start
 * @param withWords whether words are looked for too, which takes longest
 */
export function hearAll(
  samples: Samples,
  plan: CuePlan,
  sounds: ReadonlyMap<ClipId, Pattern>,
  earlyMs = 0,
  withWords = true,
): HeardAll {
  const soft = clipsOf(plan).filter(({ clip }) => /^tone\.(tick|group-\d)$/.test(clip));
  const calls = soft.map(({ clip, at }): Heard => {
    const pattern = sounds.get(clip);
    if (pattern === undefined) throw new Error(`no sound of ${clip}`);
    const [from, to] = [at - earlyMs - AROUND_MS, at - earlyMs + AROUND_MS];
    const found = locate(samples, pattern, samplesIn(from), samplesIn(to));
    const lateMs = (found.at * 1000) / RATE + earlyMs - at;
    return { clip, plannedMs: at, lateMs, match: found.match };
  });
  const { heard, planned, lateMs } = hearTones(samples, withoutTicks(plan));
  const words = withWords ? hearWords(samples, plan, sounds) : [];
  return {
    words: words.map((word) => ({ ...word, lateMs: word.lateMs + earlyMs })),
    calls,
    tones: {
      found: heard.length,
      planned: planned.length,
      lateMs: lateMs.map((late) => late + earlyMs),
      starts: heard.map(({ start }) => (start * 1000) / RATE + earlyMs),
    },
  };
}

/** A tick is too short for the detector of tones. */
const withoutTicks = (plan: CuePlan): CuePlan => ({
  ...plan,
  cues: plan.cues.filter(({ kind }) => kind !== 'tick'),
});
