import { pauseBetween } from '../../../domain/cues/phrases.ts';
import type { ClipId } from '../../../domain/cues/vocabulary.ts';
import type { VoicePack } from '../../../domain/track/pack.ts';
import { FRAME_MS, frameOf, ms } from '../../../domain/units.ts';
import { FRAME_BYTES, FRAME_SAMPLES, run, samplesOf } from '../tools.ts';

/** The recogniser's rate. */
export const HEARD_RATE = 16_000;

/** Quiet before the first word, and after the last. */
const EDGE_MS = 600;

/** Frames of some clips one after the other, as a track holds them: clips copied over quiet. */
function framesOf(clips: readonly ClipId[], { manifest, audio }: VoicePack): Uint8Array {
  let at = ms(EDGE_MS);
  const placed = clips.map((clip, i) => {
    const entry = manifest.clips[clip];
    if (entry === undefined) throw new Error(`no clip ${clip}`);
    const before = clips[i - 1];
    if (before !== undefined) at = ms(at + pauseBetween(before, clip));
    const first = frameOf(ms(at - entry.onsetMs));
    at = ms(at + entry.lengthMs);
    return { entry, first };
  });
  const total = Math.ceil((at + EDGE_MS) / FRAME_MS);
  const frames = new Uint8Array(total * FRAME_BYTES);
  for (let f = 0; f < total; f += 1) {
    const from = (manifest.quiet.firstFrame + (f % manifest.quiet.frames)) * FRAME_BYTES;
    frames.set(audio.subarray(from, from + FRAME_BYTES), f * FRAME_BYTES);
  }
  for (const { entry, first } of placed) {
    const from = entry.firstFrame * FRAME_BYTES;
    frames.set(audio.subarray(from, from + entry.frames * FRAME_BYTES), first * FRAME_BYTES);
  }
  return frames;
}

const toPcm: Record<'ffmpeg' | 'mpg123', (frames: Uint8Array) => Buffer> = {
  ffmpeg: (frames) =>
    run(
      'ffmpeg',
      ['-v', 'error', '-f', 'mp3', '-i', 'pipe:0', '-f', 's16le', '-ar', String(HEARD_RATE), '-'],
      frames,
    ).out,
  mpg123: (frames) =>
    run(
      'mpg123',
      ['-q', '-s', '--no-gapless', '-r', String(HEARD_RATE), '--resample', 'fine', '-'],
      frames,
    ).out,
};

/** Utterances as an independent decoder hears them, at {@link HEARD_RATE}. */
export function hear(
  utterances: readonly (readonly ClipId[])[],
  pack: VoicePack,
  decoder: 'ffmpeg' | 'mpg123' = 'ffmpeg',
): Float64Array[] {
  const parts = utterances.map((clips) => framesOf(clips, pack));
  const pcm = samplesOf(toPcm[decoder](Buffer.concat(parts)));
  let at = 0;
  return parts.map(({ length }) => {
    const samples = Math.round(((length / FRAME_BYTES) * FRAME_SAMPLES * HEARD_RATE) / 24_000);
    at += samples;
    return pcm.slice(at - samples, at);
  });
}
