import type { ClipId } from '../../../src/domain/cues/vocabulary.ts';
import { FRAME_BYTES, FRAME_SAMPLES } from '../../../src/domain/track/frame.ts';
import type { VoicePack } from '../../../src/domain/track/pack.ts';
import { makePattern, type Pattern } from './correlate.ts';
import { decodeFfmpeg } from './decode.ts';
import { soundIn } from './level.ts';

/** A clip's sound is what stands this far or less below its loudest 2 ms. */
const HEARD_DB = 36;
/** Frames of digital silence after each clip, so that the filters empty before the next. */
const APART = 4;

/**
 * Every clip of a pack decoded on its own, with silence before and after: nothing of the manifest
 * is used but where its frames lie. The first sample is the first of the clip's first frame.
 */
export async function clipsAlone(pack: VoicePack): Promise<ReadonlyMap<ClipId, Int16Array>> {
  const clips = Object.entries(pack.manifest.clips);
  const silence = new Uint8Array(APART * FRAME_BYTES);
  for (let i = 0; i < APART; i++) silence.set(pack.audio.subarray(0, 4), i * FRAME_BYTES);
  const parts: Uint8Array[] = [silence];
  for (const [, { firstFrame, frames }] of clips) {
    const end = firstFrame + frames;
    parts.push(pack.audio.subarray(firstFrame * FRAME_BYTES, end * FRAME_BYTES), silence);
  }
  const samples = await decodeFfmpeg(Buffer.concat(parts));
  let at = APART * FRAME_SAMPLES;
  return new Map(
    clips.map(([id, { frames }]) => {
      const start = at;
      at += (frames + APART) * FRAME_SAMPLES;
      return [id, samples.subarray(start, at)];
    }),
  );
}

/** The sound of every clip, from its first to its last as measured here. */
export async function clipSounds(pack: VoicePack): Promise<ReadonlyMap<ClipId, Pattern>> {
  const alone = await clipsAlone(pack);
  return new Map(
    [...alone].map(([id, samples]) => {
      const { start, end } = soundIn(samples, HEARD_DB);
      return [id, makePattern(samples.subarray(start, end))];
    }),
  );
}
