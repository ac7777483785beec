import type { ClipId } from '../cues/vocabulary.ts';
import { fail, ok, type Result } from '../result.ts';
import { FRAME_MS } from '../units.ts';
import { FRAME_BYTES, isOurFrame, standsAlone } from './frame.ts';
import type { ClipEntry, VoiceManifest, VoicePack } from './pack.ts';

/** Why a voice pack cannot be used. `frame` and `clip` say where. */
export type PackProblem =
  | { readonly code: 'manifest-wrong'; readonly path: string }
  | { readonly code: 'audio-length'; readonly expected: number; readonly found: number }
  | { readonly code: 'frame-wrong'; readonly frame: number }
  | { readonly code: 'entry-outside'; readonly clip: ClipId }
  | { readonly code: 'clip-missing'; readonly clip: ClipId };

/** The quiet must not be heard to repeat. */
const QUIET_MIN_FRAMES = Math.ceil(2000 / FRAME_MS);

/**
 * A pack that can be composed from, or why not: the manifest's shape, the audio's length, the
 * header of every frame and that it stands alone, that every clip lies in the audio, and that
 * nothing which may be said is missing. The hash is compared where the bytes are read.
 *
 * @param manifest as parsed from JSON, not trusted
 * @param needed every clip that a cue plan may ask for
 */
export function checkPack(
  manifest: unknown,
  audio: Uint8Array,
  needed: Iterable<ClipId> = [],
): Result<VoicePack, PackProblem> {
  const path = wrongPath(manifest);
  if (path !== undefined) return fail({ code: 'manifest-wrong', path });
  const right = manifest as VoiceManifest;
  const expected = right.frames * FRAME_BYTES;
  if (audio.length !== expected) {
    return fail({ code: 'audio-length', expected, found: audio.length });
  }
  for (let frame = 0; frame < right.frames; frame++) {
    const at = frame * FRAME_BYTES;
    if (!isOurFrame(audio, at) || !standsAlone(audio, at)) {
      return fail({ code: 'frame-wrong', frame });
    }
  }
  for (const [clip, entry] of Object.entries(right.clips)) {
    if (!liesIn(right, entry)) return fail({ code: 'entry-outside', clip });
  }
  for (const clip of needed) {
    if (!Object.hasOwn(right.clips, clip)) return fail({ code: 'clip-missing', clip });
  }
  return ok({ manifest: right, audio });
}

/** Room for the sound that the synthesis filter holds back after a clip's last frame. */
const HELD_BACK_MS = 24;

function liesIn(manifest: VoiceManifest, clip: ClipEntry): boolean {
  const heard = clip.onsetMs + clip.lengthMs;
  return (
    clip.firstFrame + clip.frames <= manifest.frames &&
    heard <= clip.frames * FRAME_MS + HELD_BACK_MS
  );
}

/** The path of the first thing in a manifest that is not as its type says. */
function wrongPath(manifest: unknown): string | undefined {
  if (!isRecord(manifest)) return '';
  if (manifest.format !== 'towpath-voice/1') return 'format';
  if (typeof manifest.sha256 !== 'string') return 'sha256';
  if (!isCount(manifest.frames, 1)) return 'frames';
  const { quiet, clips } = manifest;
  if (!isRecord(quiet)) return 'quiet';
  if (!isCount(quiet.firstFrame, 0)) return 'quiet.firstFrame';
  if (!isCount(quiet.frames, QUIET_MIN_FRAMES)) return 'quiet.frames';
  if (quiet.firstFrame + quiet.frames > manifest.frames) return 'quiet.frames';
  if (!isRecord(clips)) return 'clips';
  for (const [id, clip] of Object.entries(clips)) {
    const key = wrongEntryKey(clip);
    if (key !== undefined) return `clips.${id}${key}`;
  }
  return undefined;
}

function wrongEntryKey(clip: unknown): string | undefined {
  if (!isRecord(clip)) return '';
  if (!isCount(clip.firstFrame, 0)) return '.firstFrame';
  if (!isCount(clip.frames, 1)) return '.frames';
  if (!isCount(clip.onsetMs, 0)) return '.onsetMs';
  if (!isCount(clip.lengthMs, 1)) return '.lengthMs';
  if (typeof clip.text !== 'string') return '.text';
  return undefined;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isCount = (value: unknown, least: number): value is number =>
  Number.isSafeInteger(value) && (value as number) >= least;
