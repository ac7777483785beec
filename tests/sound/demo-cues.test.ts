import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { composeExport } from '../../src/domain/track/compose.ts';
import { clipLengths } from '../../src/domain/track/pack.ts';
import { clipSounds } from '../drivers/sound/clip-sounds.ts';
import type { Pattern } from '../drivers/sound/correlate.ts';
import { decodeFfmpeg, RATE } from '../drivers/sound/decode.ts';
import { demoSessions } from '../drivers/sound/demo-sessions.ts';
import { hearTones, hearWords, loudestBetween } from '../drivers/sound/hear.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/** One frame of MPEG-2 Layer III at 24 kHz: 576 samples (ISO/IEC 13818-3). */
const FRAME = 24;
const pack = voicePack();
const { lengthOf } = clipLengths(pack.manifest);
let sounds: ReadonlyMap<string, Pattern>;

const measured = { words: 0, tones: 0, wordsLate: 0, tonesLate: 0, match: 1, between: -Infinity };
const worse = (a: number, b: number) => Math.max(a, Math.abs(b));

beforeAll(async () => {
  sounds = await clipSounds(pack);
});

afterAll(() => {
  console.log(
    `demo, decoded by ffmpeg: ${measured.tones} tones at most ${measured.tonesLate.toFixed(1)} ms ` +
      `and ${measured.words} words at most ${measured.wordsLate.toFixed(1)} ms from their plan; ` +
      `least match ${measured.match.toFixed(3)}; loudest between cues ${measured.between.toFixed(1)} dBFS`,
  );
});

/** Every session of the demo, and the first and last also as they sound with more or fewer cues. */
const sessions = [
  ...demoSessions(pack, 'usual'),
  ...demoSessions(pack, 'many').slice(0, 1),
  ...demoSessions(pack, 'few').slice(-1),
].map((session, index) => ({ ...session, index }));

/** The next session is decoded by its own process while this one is measured. */
const coming = new Map<number, Promise<Int16Array>>();
function decoded(index: number): Promise<Int16Array> {
  const cues = sessions[index]?.cues;
  if (cues === undefined) return Promise.resolve(new Int16Array());
  const made = coming.get(index) ?? decodeFfmpeg(composeExport(cues, pack));
  coming.set(index, made);
  return made;
}

describe.each(sessions)('decoded sound of $name, $talk cues', ({ cues, index }) => {
  let samples: Int16Array = new Int16Array();
  beforeAll(async () => {
    samples = await decoded(index);
    coming.delete(index);
    decoded(index + 1).catch(() => {});
  });
  afterAll(() => {
    samples = new Int16Array();
  });

  test('TRACK-3 every word is heard within one frame of its plan, by its own sound', () => {
    const heard = hearWords(samples, cues, sounds);
    expect(heard.length).toBeGreaterThanOrEqual(5);
    for (const word of heard) {
      measured.wordsLate = worse(measured.wordsLate, word.lateMs);
      measured.match = Math.min(measured.match, word.match);
    }
    measured.words += heard.length;
    expect(heard.filter(({ match }) => match < 0.95)).toEqual([]);
    expect(heard.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
  });

  test('TRACK-3 the tones that a detector finds are the planned ones, each within one frame', () => {
    const { heard, planned, lateMs } = hearTones(samples, cues);
    const lengths = heard.map(({ start, end }) => Math.round(((end - start) * 10) / RATE) / 10);
    expect(heard.length).toBe(planned.length);
    expect(lengths).toEqual(planned.map(({ clip }) => (clip === 'tone.short' ? 0.1 : 0.6)));
    for (const late of lateMs) measured.tonesLate = worse(measured.tonesLate, late);
    measured.tones += heard.length;
    expect(lateMs.filter((late) => Math.abs(late) > FRAME)).toEqual([]);
  });

  test('TRACK-5 between cues and to the end it is quiet', () => {
    const { db, atMs } = loudestBetween(samples, cues, lengthOf, 100);
    measured.between = Math.max(measured.between, db);
    expect(db, `at ${atMs} ms`).toBeLessThan(-50);
    expect(samples.length / RATE).toBeGreaterThanOrEqual(cues.total / 1000 + 120);
  });
});
