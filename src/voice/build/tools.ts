import { spawnSync } from 'node:child_process';

/** Samples per second of everything after the speech engine, and of the track. */
export const RATE = 24_000;

/** MPEG-2 Layer III at 24 kHz (ISO/IEC 13818-3): one granule of 576 samples a frame. */
export const FRAME_SAMPLES = 576;

/** 72 x 32,000 / 24,000, without padding. */
export const FRAME_BYTES = 96;

/**
 * Runs a program to its end and gives what it wrote.
 * Throws when it cannot be started or fails: a build has nothing better to do.
 */
export function run(
  program: string,
  args: readonly string[],
  input?: Uint8Array,
): { out: Buffer; err: string } {
  const done = spawnSync(program, args, {
    ...(input ? { input } : {}),
    maxBuffer: 1 << 30,
  });
  if (done.error) throw done.error;
  if (done.status !== 0)
    throw new Error(`${program} ${args.join(' ')}: ${done.stderr.toString().slice(-500)}`);
  return { out: done.stdout, err: done.stderr.toString() };
}

/** 16-bit little-endian samples as numbers from -1 to 1. */
export function samplesOf(raw: Uint8Array): Float64Array {
  const view = new DataView(raw.buffer, raw.byteOffset, raw.byteLength);
  return Float64Array.from(
    { length: raw.byteLength >> 1 },
    (_, i) => view.getInt16(2 * i, true) / 32768,
  );
}

/** Numbers from -1 to 1 as 16-bit little-endian samples, rounded and clipped. */
export function rawOf(samples: Float64Array): Buffer {
  const raw = Buffer.alloc(2 * samples.length);
  samples.forEach((s, i) => {
    raw.writeInt16LE(Math.max(-32768, Math.min(32767, Math.round(s * 32768))), 2 * i);
  });
  return raw;
}

/** Arguments by which sox reads or writes bare 16-bit mono at a rate. */
export const soxRaw = (rate: number): string[] => [
  ...['-t', 'raw', '-r', String(rate), '-e', 'signed', '-b', '16', '-c', '1'],
  '-L',
];

/** Arguments by which ffmpeg reads bare 16-bit mono at a rate. */
export const ffmpegRaw = (rate: number): string[] => [
  ...['-f', 's16le', '-ar', String(rate), '-ac', '1', '-i', 'pipe:0'],
];
