import type { Cue, CuePlan, PlacedClip } from '../../../src/domain/cues/cue.ts';
import {
  FRAME_BYTES,
  FRAME_HEADER,
  HEADER_BYTES,
  SIDE_INFO_BYTES,
} from '../../../src/domain/track/frame.ts';
import type { ClipEntry, VoicePack } from '../../../src/domain/track/pack.ts';
import { ms } from '../../../src/domain/units.ts';

const MARK_AT = HEADER_BYTES + SIDE_INFO_BYTES;
const QUIET_FRAMES = 97;

/** What a frame of a synthetic pack says of itself: which clip (0 is quiet) and which frame of it. */
export interface Mark {
  readonly clip: number;
  readonly frame: number;
}

/** Clips of a synthetic pack are named `clip.1`, `clip.2`, ... in the order given. */
export const clipName = (index: number): string => `clip.${index + 1}`;

/**
 * A pack whose frames are real by their headers and carry a mark instead of sound, so that a
 * composed track can be read back frame by frame without a decoder.
 */
export function syntheticPack(
  shapes: readonly Pick<ClipEntry, 'frames' | 'onsetMs' | 'lengthMs'>[],
): VoicePack {
  const runs = [{ frames: QUIET_FRAMES }, ...shapes];
  const frames = runs.reduce((sum, run) => sum + run.frames, 0);
  const audio = new Uint8Array(frames * FRAME_BYTES);
  const clips: Record<string, ClipEntry> = {};
  let at = 0;
  runs.forEach((run, clip) => {
    for (let frame = 0; frame < run.frames; frame++) mark(audio, at + frame, { clip, frame });
    const shape = shapes[clip - 1];
    if (shape) clips[clipName(clip - 1)] = { ...shape, firstFrame: at, text: clipName(clip - 1) };
    at += run.frames;
  });
  const quiet = { firstFrame: 0, frames: QUIET_FRAMES };
  return { manifest: { format: 'towpath-voice/1', sha256: '', frames, quiet, clips }, audio };
}

function mark(audio: Uint8Array, frame: number, { clip, frame: own }: Mark): void {
  const start = frame * FRAME_BYTES;
  audio.set(FRAME_HEADER, start);
  new DataView(audio.buffer).setUint16(start + MARK_AT, clip);
  new DataView(audio.buffer).setUint16(start + MARK_AT + 2, own);
}

/** The marks of a composed track's frames of sound, its Info frame left out. */
export function marksOf(track: Uint8Array): Mark[] {
  const view = new DataView(track.buffer, track.byteOffset, track.byteLength);
  const marks: Mark[] = [];
  for (let at = FRAME_BYTES; at < track.length; at += FRAME_BYTES) {
    marks.push({ clip: view.getUint16(at + MARK_AT), frame: view.getUint16(at + MARK_AT + 2) });
  }
  return marks;
}

/** The mark that the quiet loop has at a frame of the track. */
export const quietAt = (frame: number): Mark => ({ clip: 0, frame: frame % QUIET_FRAMES });

/** A cue plan of single clips at given places, for packs whose lengths are known. */
export function planOf(placed: readonly PlacedClip[], pack: VoicePack, totalMs: number): CuePlan {
  const cues = placed.map((clip): Cue => {
    const length = pack.manifest.clips[clip.clip]?.lengthMs ?? 0;
    const text = pack.manifest.clips[clip.clip]?.text ?? '';
    const end = ms(clip.at + length);
    return { kind: 'change', at: clip.at, end, clips: [clip], text, segment: 0 };
  });
  return { cues, total: ms(totalMs) };
}
