import type { CuePlan, PlacedClip } from '../cues/cue.ts';
import type { ClipId } from '../cues/vocabulary.ts';
import { FRAME_MS, type Ms } from '../units.ts';
import type { ClipEntry } from './pack.ts';

/** A run of frames of one clip, and where in the track (in frames of sound from 0) it goes. */
export interface Placement {
  /** First frame in the track. */
  readonly to: number;
  /** First frame in the pack's audio. */
  readonly from: number;
  readonly frames: number;
}

/** The frame of a clip, counted from its own first, after which nothing of it is heard. */
const audibleEnd = (clip: ClipEntry): number =>
  Math.min(clip.frames, Math.ceil((clip.onsetMs + clip.lengthMs) / FRAME_MS));

/** The frame of the track at which a clip begins, so that its first sound is nearest to `at`. */
export const startFrame = (clip: ClipEntry, at: Ms): number =>
  Math.round((at - clip.onsetMs) / FRAME_MS);

/**
 * Where the frames of every clip go.
 *
 * The frames that a clip's sound needs are never written over by a later one. The quiet before a
 * later clip's first sound starts only after them, and takes the place of the quiet after the
 * earlier clip's last. What would fall before 0 or after `frames` is left out.
 *
 * @param plan clips in order of time, their audible parts not overlapping
 * @param shift where the plan's 0 lies in the track, in frames
 * @param frames length of the plan's room, in frames
 */
export function placements(
  plan: CuePlan,
  entryOf: (clip: ClipId) => ClipEntry,
  shift: number,
  frames: number,
): Placement[] {
  const placed: Placement[] = [];
  let free = 0;
  for (const { at, clip } of clipsOf(plan)) {
    const entry = entryOf(clip);
    const start = startFrame(entry, at);
    const first = Math.max(start, free);
    const end = Math.min(start + entry.frames, frames);
    const before = placed.at(-1);
    if (before && before.to + before.frames > shift + first) {
      placed[placed.length - 1] = { ...before, frames: shift + first - before.to };
    }
    if (first < end) {
      const from = entry.firstFrame + first - start;
      placed.push({ to: shift + first, from, frames: end - first });
    }
    free = Math.max(free, Math.min(frames, start + audibleEnd(entry)));
  }
  return placed;
}

/** Every clip of a plan, in order of time. */
export const clipsOf = (plan: CuePlan): PlacedClip[] => plan.cues.flatMap((cue) => cue.clips);
