import { beforeAll, describe, expect, test } from 'vitest';
import type { Cue } from '../../src/domain/cues/cue.ts';
import { TONE } from '../../src/domain/cues/phrases.ts';
import { planWaiting } from '../../src/domain/cues/waiting.ts';
import { composeTrack } from '../../src/domain/track/compose.ts';
import { clipLengths } from '../../src/domain/track/pack.ts';
import { ms } from '../../src/domain/units.ts';
import { clipSounds } from '../drivers/sound/clip-sounds.ts';
import type { Pattern } from '../drivers/sound/correlate.ts';
import { decodeFfmpeg, RATE } from '../drivers/sound/decode.ts';
import { hearTones, hearWords, loudestBetween } from '../drivers/sound/hear.ts';
import { loudestWindow, samplesIn } from '../drivers/sound/level.ts';
import { trackOf } from '../drivers/sound/track-of.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

const FRAME = 24;
const QUIET_DB = -50;
const pack = voicePack();
const lengths = clipLengths(pack.manifest);
const leadIn = planWaiting(ms(395_000), lengths);
const plan = { ...trackOf('2 min walk; 2 x (1 min walk, 1 min run)', pack), leadIn };
const { bytes, layout } = composeTrack(plan, pack);
const before = layout.leadIn?.length ?? Number.NaN;

const isTick = ({ clips }: Cue): boolean => clips[0]?.clip === TONE.tick;

let samples: Int16Array;
let sounds: ReadonlyMap<string, Pattern>;
beforeAll(async () => {
  [samples, sounds] = await Promise.all([decodeFfmpeg(bytes), clipSounds(pack)]);
});

/** Decoded by ffmpeg (libavcodec's MP3 decoder), which is not the project's own. */
describe('a track with a wait before it, decoded', () => {
  const wait = (): Int16Array => samples.subarray(0, samplesIn(before));
  const session = (): Int16Array =>
    samples.subarray(samplesIn(before), samplesIn(before + layout.tail.end));

  test('WAIT-6 is as long as the wait and the session with its lanes', () => {
    expect(before).toBe(8 * 60_000);
    expect(samples.length / RATE).toBe((before + layout.total) / 1000);
  });

  test('WAIT-6 the session’s first tone is at the end of the lead-in within one frame', () => {
    const { heard } = hearTones(session(), plan.cues);
    expect(Math.abs(((heard[0]?.start ?? Number.NaN) * 1000) / RATE)).toBeLessThanOrEqual(FRAME);
  });

  test('WAIT-6 every word and tone of the wait is heard at its plan', () => {
    const words = hearWords(wait(), leadIn, sounds);
    expect(words.length).toBeGreaterThan(10);
    expect(words.filter(({ match }) => match < 0.95)).toEqual([]);
    expect(words.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
    const tones = hearTones(wait(), { ...leadIn, cues: leadIn.cues.filter((cue) => !isTick(cue)) });
    expect(tones.heard.length).toBe(tones.planned.length);
    expect(tones.lateMs.filter((late) => Math.abs(late) > FRAME)).toEqual([]);
  });

  test('WAIT-6 a soft tick at each minute in which nothing is said, and not before it', () => {
    const ticks = leadIn.cues.filter(isTick);
    expect(ticks.map(({ at }) => (leadIn.total - at) / 60_000)).toEqual([6, 4, 3]);
    for (const { at, end } of ticks) {
      const level = (from: number, to: number): number =>
        loudestWindow(samples, samplesIn(from), samplesIn(to)).db;
      expect(level(at - FRAME, end + FRAME)).toBeGreaterThan(QUIET_DB + 10);
      expect(level(at - 1000, at - 100)).toBeLessThan(QUIET_DB);
      expect(level(end + 100, end + 1000)).toBeLessThan(QUIET_DB);
    }
  });

  test('WAIT-6 between them it is quiet', () => {
    const { db } = loudestBetween(wait(), leadIn, (clip) => lengths.lengthOf(clip), 100);
    expect(db).toBeLessThan(QUIET_DB);
  });

  test('WAIT-6 the session behind it is the one without a wait, sample for sample', async () => {
    const alone = composeTrack({ ...plan, leadIn: undefined }, pack);
    const other = await decodeFfmpeg(alone.bytes);
    expect(alone.layout).toEqual({ ...layout, leadIn: undefined });
    const from = samplesIn(100);
    const to = samplesIn(layout.tail.end);
    let most = 0;
    for (let n = from; n < to; n++) {
      most = Math.max(most, Math.abs((other[n] ?? 0) - (samples[samplesIn(before) + n] ?? 0)));
    }
    expect(most).toBe(0);
  });
});
