import type { Cue, PlacedClip } from '../../../domain/cues/cue.ts';
import { cueOf, placeClips } from '../../../domain/cues/speak.ts';
import type { ClipId } from '../../../domain/cues/vocabulary.ts';
import { composeExport } from '../../../domain/track/compose.ts';
import { clipLengths, type VoicePack } from '../../../domain/track/pack.ts';
import { type Ms, ms } from '../../../domain/units.ts';
import { run, samplesOf } from '../tools.ts';

/** The recogniser's rate. */
export const HEARD_RATE = 16_000;

/** Quiet before the first word of an utterance, and after its last. */
const EDGE = 600;

/** Decoders that know nothing of each other, dropping nothing of what they hear. */
const DECODERS = {
  ffmpeg: ['ffmpeg', '-v', 'error', '-f', 'mp3', '-i', 'pipe:0', '-f', 's16le', '-ar'],
  mpg123: ['mpg123', '-q', '-s', '--no-gapless', '--resample', 'fine', '-r'],
} as const;

/** A program that decodes MP3, by its name. */
export type Decoder = keyof typeof DECODERS;

function decode(mp3: Uint8Array, decoder: Decoder): Float64Array {
  const [program, ...args] = DECODERS[decoder];
  return samplesOf(run(program, [...args, String(HEARD_RATE), '-'], mp3).out);
}

/**
 * Utterances as they are heard in a session: planned as cues, composed into one track by the
 * composer, decoded, and cut apart again with quiet around each, at {@link HEARD_RATE}.
 */
export function hear(
  utterances: readonly (readonly ClipId[])[],
  pack: VoicePack,
  decoder: Decoder = 'ffmpeg',
): Float64Array[] {
  const lengths = clipLengths(pack.manifest);
  const placed = utterances.map((clips) => placeClips(clips, ms(0), lengths));
  return hearPlaced(placed, pack, decoder);
}

/** The same of clips that have their places, the first of each utterance at 0. */
export function hearPlaced(
  utterances: readonly (readonly PlacedClip[])[],
  pack: VoicePack,
  decoder: Decoder = 'ffmpeg',
): Float64Array[] {
  const lengths = clipLengths(pack.manifest);
  const cues: Cue[] = [];
  const cuts: [from: Ms, to: Ms][] = [];
  let at = ms(0);
  for (const clips of utterances) {
    const moved = clips.map(({ clip, at: own }) => ({ clip, at: ms(at + EDGE + own) }));
    const cue = cueOf({ kind: 'change', segment: 0 }, moved, '', lengths);
    const end = ms(cue.end + EDGE);
    cues.push(cue);
    cuts.push([at, end]);
    at = end;
  }
  const pcm = decode(composeExport({ cues, total: at }, pack), decoder);
  const sampleAt = (place: Ms): number => Math.round((place * HEARD_RATE) / 1000);
  return cuts.map(([from, to]) => pcm.slice(sampleAt(from), sampleAt(to)));
}
