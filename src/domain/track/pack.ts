import type { ClipLengths } from '../cues/cue.ts';
import type { ClipId } from '../cues/vocabulary.ts';
import type { Ms } from '../units.ts';

/** Where a clip lies in the pack's audio, and what is heard of it. */
export interface ClipEntry {
  readonly firstFrame: number;
  readonly frames: number;
  /**
   * From the start of the clip's first frame to its first sound, as a decoder hears it:
   * lead-in plus the encoder's and decoder's constant delay.
   */
  readonly onsetMs: Ms;
  /** From its first sound to its last. */
  readonly lengthMs: Ms;
  /** What it says, as a caption; empty for a tone. */
  readonly text: string;
}

/**
 * The voice pack's manifest. The audio beside it is a bare run of MPEG-2 Layer III frames
 * (24 kHz, mono, 32 kbit/s, 96 bytes each, no bit reservoir, no Info frame, no tags).
 */
export interface VoiceManifest {
  readonly format: 'towpath-voice/1';
  /** Hash of the audio: a cached pack whose bytes do not match is damaged. */
  readonly sha256: string;
  readonly frames: number;
  /** A loop of quiet noise near -60 dBFS, several seconds long. */
  readonly quiet: { readonly firstFrame: number; readonly frames: number };
  readonly clips: Readonly<Record<ClipId, ClipEntry>>;
}

/** A pack ready to compose from: `audio` holds `manifest.frames` x 96 bytes. */
export interface VoicePack {
  readonly manifest: VoiceManifest;
  readonly audio: Uint8Array;
}

/**
 * A clip's entry.
 *
 * @throws on a clip that the pack has not: a pack is checked before it is used
 */
export function entryOf({ clips }: VoiceManifest, clip: ClipId): ClipEntry {
  const entry = clips[clip];
  if (entry === undefined) throw new Error(`the voice pack has no clip ${clip}`);
  return entry;
}

/** How long each clip of a pack is heard: what a cue plan is made with. */
export const clipLengths = (manifest: VoiceManifest): ClipLengths => ({
  lengthOf: (clip) => entryOf(manifest, clip).lengthMs,
});
