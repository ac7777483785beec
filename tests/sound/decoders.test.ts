import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { composeExport, composeTrack } from '../../src/domain/track/compose.ts';
import { FRAME_BYTES, FRAME_SAMPLES } from '../../src/domain/track/frame.ts';
import {
  decodeFfmpeg,
  decodeMpg123,
  decodeMpg123Binary,
  probe,
  RATE,
  validate,
} from '../drivers/sound/decode.ts';
import { trackOf } from '../drivers/sound/track-of.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/**
 * mpg123 takes its own filters' delay, 529 samples, off the start of a file with an Info frame
 * (libmpg123's GAPLESS_DELAY). ffmpeg leaves it. Neither cuts anything else.
 */
const MPG123_DELAY = 529;

const pack = voicePack();
const plan = trackOf('90 s walk; 3 x (30 s walk, 45 s run)', pack);

describe.each([
  ['a whole track', composeTrack(plan, pack).bytes],
  ['an export', composeExport(plan.cues, pack)],
])('%s', (_, bytes) => {
  const folder = mkdtempSync(join(tmpdir(), 'towpath-track-'));
  const file = join(folder, 'track.mp3');
  const frames = bytes.length / FRAME_BYTES - 1;
  beforeAll(() => writeFileSync(file, bytes));
  afterAll(() => rmSync(folder, { recursive: true }));

  test('TRACK-13 ffmpeg decodes every frame but the Info frame, without complaint', async () => {
    expect((await decodeFfmpeg(bytes)).length).toBe(frames * FRAME_SAMPLES);
  });

  test('TRACK-13 mpg123 agrees, as a program and as WebAssembly', async () => {
    const expected = frames * FRAME_SAMPLES - MPG123_DELAY;
    expect((await decodeMpg123Binary(bytes)).length).toBe(expected);
    expect((await decodeMpg123(bytes)).length).toBe(expected);
  });

  test('TRACK-2 a demuxer reads the exact length from the Info frame before decoding', () => {
    const { duration, bitRate, start } = probe(file);
    expect(duration).toBeCloseTo((frames * FRAME_SAMPLES) / RATE, 5);
    // ffprobe divides the whole file by its length: the Info frame is the rest.
    expect(Math.abs(bitRate - 32_000)).toBeLessThan(10);
    expect(start).toBe(0);
  });

  test('TRACK-13 mp3val finds nothing wrong and counts the same frames', () => {
    expect(validate(file)).toEqual({ complaints: [], frames: frames + 1 });
  });

  test('TRACK-13 mp3val would find a wrong number in the Info frame, and a damaged frame', () => {
    const wrong = Uint8Array.from(bytes);
    wrong[22] = 7;
    wrong[1000 * FRAME_BYTES + 1] = 0;
    writeFileSync(join(folder, 'wrong.mp3'), wrong);
    expect(validate(join(folder, 'wrong.mp3')).complaints.length).toBeGreaterThanOrEqual(2);
  });
});
