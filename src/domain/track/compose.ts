import type { CuePlan } from '../cues/cue.ts';
import type { ClipId } from '../cues/vocabulary.ts';
import { FRAME_MS, frameOf, type Ms, ms } from '../units.ts';
import { FRAME_BYTES } from './frame.ts';
import { writeInfoFrame } from './info-frame.ts';
import { GUARD, type LeadIn, layOut, onFrame, type TrackLayout } from './layout.ts';
import { type ClipEntry, entryOf, type VoicePack } from './pack.ts';
import { type Placement, placements } from './placement.ts';

/** What a track is to be made of. */
export interface TrackPlan {
  /** The session's cues; `cues.total` is the session's length, the finish words come after it. */
  readonly cues: CuePlan;
  /**
   * Cue plans of the lanes, each from its own 0; `total` is a lane's length without its quiet
   * end, which the last words may begin.
   */
  readonly lanes: {
    readonly holding: CuePlan;
    /** Words, then one minute: `total` is both together. */
    readonly oneMore: CuePlan;
    /** Given only where the plan has no cool-down of its own. */
    readonly coolDown?: CuePlan | undefined;
  };
  /** Before the session, where people wait for its start: from its own 0, and ending at the start. */
  readonly leadIn?: CuePlan | undefined;
}

/** A track as one file, and where its lanes lie in it. */
export interface ComposedTrack {
  /** A whole MP3 file. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly layout: TrackLayout;
}

/**
 * One session as one MP3 file: the wait for its start where there is one, its cues, and the
 * lanes behind it.
 *
 * Nothing is encoded: frames of the pack are copied to their places. The first sound of every clip
 * is within half a frame (12 ms) of its planned time, as a decoder that drops nothing hears it.
 *
 * @throws on a clip that the pack has not: a pack is checked before it is used
 */
export function composeTrack(plan: TrackPlan, pack: VoicePack): ComposedTrack {
  const { holding, oneMore, coolDown } = plan.lanes;
  const lengths = {
    holding: holding.total,
    oneMore: oneMore.total,
    coolDown: coolDown?.total,
  };
  const layout = layOut(plan.cues.total, lengths, plan.leadIn && leadInOf(plan.leadIn));
  const { tail, holding: held, oneMore: more, coolDown: cool, total } = layout;
  const before = layout.leadIn?.length ?? ms(0);
  const put = (cues: CuePlan, from: Ms, to: Ms): Placement[] =>
    placements(cues, entries(pack), frameOf(ms(before + from)), frameOf(ms(to - from)));
  const placed = [
    ...(plan.leadIn ? put(plan.leadIn, ms(-before), ms(0)) : []),
    ...put(plan.cues, ms(0), tail.end),
    ...put(holding, held.start, more.start),
    ...put(oneMore, more.start, cool?.start ?? total),
    ...(coolDown && cool ? put(coolDown, cool.start, total) : []),
  ];
  return { bytes: copyFrames(ms(before + total), placed, pack), layout };
}

/** Where a wait lies before the session. Its length is whole frames, so that 0 is one's start. */
export function leadInOf({ total, cues }: CuePlan): LeadIn {
  const length = onFrame(total);
  return {
    length,
    sounds: cues.map(({ at, end }) => ({ start: ms(at - length), end: ms(end - length) })),
  };
}

/**
 * A session as an MP3 file for any player: its cues and a quiet tail, no lanes.
 *
 * @param tail quiet after `cues.total`, which last words may begin
 * @throws on a clip that the pack has not: a pack is checked before it is used
 */
export function composeExport(
  cues: CuePlan,
  pack: VoicePack,
  tail: Ms = GUARD,
): Uint8Array<ArrayBuffer> {
  const length = onFrame(ms(cues.total + tail));
  return copyFrames(length, placements(cues, entries(pack), 0, frameOf(length)), pack);
}

const entries =
  ({ manifest }: VoicePack) =>
  (clip: ClipId): ClipEntry =>
    entryOf(manifest, clip);

/** The only buffer of a track's size that composing makes is the track itself. */
function copyFrames(
  length: Ms,
  placed: readonly Placement[],
  pack: VoicePack,
): Uint8Array<ArrayBuffer> {
  const frames = length / FRAME_MS;
  const bytes = new Uint8Array((frames + 1) * FRAME_BYTES);
  writeInfoFrame(bytes, frames);
  const sound = bytes.subarray(FRAME_BYTES);
  fillQuiet(sound, pack);
  for (const { to, from, frames: count } of placed) {
    const clip = pack.audio.subarray(from * FRAME_BYTES, (from + count) * FRAME_BYTES);
    sound.set(clip, to * FRAME_BYTES);
  }
  return bytes;
}

/** The loop over and over, by doubling what is there already. */
function fillQuiet(sound: Uint8Array, pack: VoicePack): void {
  const { firstFrame, frames } = pack.manifest.quiet;
  const loop = pack.audio.subarray(firstFrame * FRAME_BYTES, (firstFrame + frames) * FRAME_BYTES);
  sound.set(loop.subarray(0, Math.min(loop.length, sound.length)));
  let filled = loop.length;
  while (filled < sound.length) {
    sound.copyWithin(filled, 0, Math.min(filled, sound.length - filled));
    filled *= 2;
  }
}
