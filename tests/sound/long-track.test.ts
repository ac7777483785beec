import { beforeAll, describe, expect, test } from 'vitest';
import { composeExport } from '../../src/domain/track/compose.ts';
import { clipSounds } from '../drivers/sound/clip-sounds.ts';
import type { Pattern } from '../drivers/sound/correlate.ts';
import { decodeFfmpeg, decodeMpg123Binary, RATE } from '../drivers/sound/decode.ts';
import { sessionOf } from '../drivers/sound/demo-sessions.ts';
import { hearTones, hearWords } from '../drivers/sound/hear.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

const FRAME = 24;
/** Taken off the start by mpg123, in samples: see the test of decoders. */
const MPG123_DELAY = 529;
const LATE_MS = 100 * 60_000;

const pack = voicePack();
const { cues } = sessionOf(
  '5 min walk; 37 x (1 min walk, 2 min 5 s run); 5 min walk',
  pack,
  'many',
);
const mp3 = composeExport(cues, pack);
let sounds: ReadonlyMap<string, Pattern>;
beforeAll(async () => {
  sounds = await clipSounds(pack);
});

describe('a session of two hours', () => {
  test('TRACK-3 cues in its last twenty minutes are as near to their plan as the first', async () => {
    const samples = await decodeFfmpeg(mp3);
    expect(cues.total).toBeGreaterThan(2 * 3_600_000);
    const { heard, planned, lateMs } = hearTones(samples, cues);
    expect(heard.length).toBe(planned.length);
    const words = hearWords(samples, cues, sounds);
    const late = words.filter(({ plannedMs }) => plannedMs > LATE_MS);
    expect(late.length).toBeGreaterThan(20);
    expect(words.filter(({ match }) => match < 0.95)).toEqual([]);
    expect(words.filter(({ lateMs: ms }) => Math.abs(ms) > FRAME)).toEqual([]);
    expect(lateMs.filter((ms) => Math.abs(ms) > FRAME)).toEqual([]);
    const drift = (of: readonly number[]) => of.reduce((sum, ms) => sum + ms, 0) / of.length;
    const inLastPart = lateMs.filter((_, i) => (planned[i]?.at ?? 0) > LATE_MS);
    console.log(
      `two hours: tones late by ${drift(lateMs.slice(1, 60)).toFixed(2)} ms on average at the ` +
        `start and ${drift(inLastPart).toFixed(2)} ms in the last twenty minutes`,
    );
  });

  test('TRACK-13 mpg123 hears the tones at the same places, its own delay apart', async () => {
    const samples = await decodeMpg123Binary(mp3);
    const { heard, planned, lateMs } = hearTones(samples, cues);
    expect(heard.length).toBe(planned.length);
    const put = lateMs.map((ms) => ms + (MPG123_DELAY * 1000) / RATE);
    expect(put.slice(1).filter((ms) => Math.abs(ms) > FRAME)).toEqual([]);
  });
});
