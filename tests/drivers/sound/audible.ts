import type { ClipEntry } from '../../../src/domain/track/pack.ts';
import { FRAME_MS } from '../../../src/domain/units.ts';

/**
 * Frames of a clip, counted from its own first, without which its sound would be clipped: those of
 * its first and last sound, one before for the overlap of transforms, and those in the synthesis
 * filter, 512 samples or 21.3 ms long at 24 kHz (ISO/IEC 11172-3, 2.4.3.4).
 */
export function audibleFrames(clip: ClipEntry): { readonly first: number; readonly end: number } {
  const first = Math.floor((clip.onsetMs - 21.34) / FRAME_MS) - 1;
  const end = Math.ceil((clip.onsetMs + clip.lengthMs) / FRAME_MS);
  return { first: Math.max(0, first), end: Math.min(clip.frames, end) };
}
