import { beforeAll, describe, expect, test } from 'vitest';
import { hearPiece } from '../../src/app/hearing.ts';
import { clipLengths } from '../../src/domain/track/pack.ts';
import { demoTimelines } from '../domain/cues/demo.ts';
import { clipSounds } from '../drivers/sound/clip-sounds.ts';
import type { Pattern } from '../drivers/sound/correlate.ts';
import { decodeFfmpeg, decodeMpg123, RATE } from '../drivers/sound/decode.ts';
import { hearTones, hearWords, loudestBetween } from '../drivers/sound/hear.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/** One frame of MPEG-2 Layer III at 24 kHz: 576 samples (ISO/IEC 13818-3). */
const FRAME = 24;
const pack = voicePack();
const { lengthOf } = clipLengths(pack.manifest);
let sounds: ReadonlyMap<string, Pattern>;
beforeAll(async () => {
  sounds = await clipSounds(pack);
});

const demo = demoTimelines();
const heard = [
  { session: demo[0], talk: 'usual' },
  { session: demo.at(-1), talk: 'many' },
] as const;

describe.each(heard)('$session.name from cue to cue, $talk cues, decoded', ({ session, talk }) => {
  if (session === undefined) throw new Error('the demo has no session');
  const { timeline, options } = session;
  const piece = { timeline, ...options, fileName: 'demo' };
  const { short, sound = new Uint8Array() } = hearPiece(piece, talk, pack);
  const { plan } = short;
  let samples: Int16Array = new Int16Array();
  beforeAll(async () => {
    samples = await decodeFfmpeg(sound);
  });

  test('HEAR-2 every word is heard within one frame of its place, by its own sound', () => {
    const words = hearWords(samples, plan, sounds);
    expect(words.length).toBeGreaterThan(50);
    expect(words.filter(({ match }) => match < 0.95)).toEqual([]);
    expect(words.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
  });

  test('HEAR-2 the tones that a detector finds are the planned ones, each within one frame', () => {
    const { heard, planned, lateMs } = hearTones(samples, plan);
    // Four at every boundary of the session, its end included, and the waking one.
    expect(planned.length).toBe(timeline.segments.length * 4 + 1);
    expect(heard.length).toBe(planned.length);
    expect(lateMs.filter((late) => Math.abs(late) > FRAME)).toEqual([]);
  });

  test('HEAR-2 between cues it is quiet, and two decoders agree on a length that ends after the last word', async () => {
    expect(loudestBetween(samples, plan, lengthOf, 100).db).toBeLessThan(-50);
    const seconds = samples.length / RATE;
    expect(seconds).toBeGreaterThan(plan.total / 1000 + 0.4);
    expect(seconds).toBeLessThan(plan.total / 1000 + 0.7);
    expect(seconds).toBeLessThan(timeline.total / 3000);
    const other = await decodeMpg123(sound);
    expect(Math.abs(other.length - samples.length)).toBeLessThanOrEqual(2 * 576);
  });
});
