import { FRAME_BYTES, FRAME_SAMPLES, RATE, rawOf, run, samplesOf } from './tools.ts';

/**
 * What an encoder and a decoder put before the first sample: 576 of the encoder and 529 of the
 * decoder's filterbanks (lame's 576 + 528 + 1; measured again from the decoded pack).
 */
export const CODEC_DELAY = 1105;

/** Silence before a clip's first sample, so that it is heard on the start of its third frame. */
const LEAD = 2 * FRAME_SAMPLES - CODEC_DELAY;

/** Whether four bytes are the header that every frame of the pack has. */
const isFrame = (bytes: Uint8Array, at: number): boolean =>
  bytes[at] === 0xff && bytes[at + 1] === 0xf3 && bytes[at + 2] === 0x44;

/** MPEG-2 Layer III frames of some samples: mono, 32 kbit/s, no reservoir, no tags, no padding. */
export function encode(samples: Float64Array): Uint8Array {
  const { out } = run(
    'lame',
    [
      ...[
        '--quiet',
        '-r',
        '-s',
        '24',
        '--bitwidth',
        '16',
        '--signed',
        '--little-endian',
        '-m',
        'm',
      ],
      ...['--cbr', '-b', '32', '--resample', '24', '--nores', '-t', '-q', '0', '--lowpass', '-1'],
      ...['--noreplaygain', '-', '-'],
    ],
    rawOf(samples),
  );
  for (let at = 0; at < out.length; at += FRAME_BYTES)
    if (!isFrame(out, at)) throw new Error(`no bare frame at byte ${at} of ${out.length}`);
  return out;
}

/** A clip's frames: from silence, to the frame in which its last sample is heard. */
export function encodeClip(clip: Float64Array): Uint8Array {
  const padded = new Float64Array(LEAD + clip.length + 4 * FRAME_SAMPLES);
  padded.set(clip, LEAD);
  const frames = Math.ceil((CODEC_DELAY + LEAD + clip.length) / FRAME_SAMPLES);
  return encode(padded).slice(0, frames * FRAME_BYTES);
}

/** A loop of quiet: the frames around its seam are left out. */
export function encodeQuiet(noise: Float64Array, frames: number): Uint8Array {
  return encode(noise).slice(4 * FRAME_BYTES, (4 + frames) * FRAME_BYTES);
}

/** Samples as ffmpeg hears some frames. */
export function decode(frames: Uint8Array): Float64Array {
  const args = [
    '-v',
    'error',
    '-f',
    'mp3',
    '-i',
    'pipe:0',
    '-f',
    's16le',
    '-ar',
    String(RATE),
    '-',
  ];
  return samplesOf(run('ffmpeg', args, frames).out);
}
