import { beforeAll, describe, expect, test } from 'vitest';
import type { CuePlan } from '../../src/domain/cues/cue.ts';
import { composeTrack } from '../../src/domain/track/compose.ts';
import type { Lane } from '../../src/domain/track/layout.ts';
import { clipSounds } from '../drivers/sound/clip-sounds.ts';
import type { Pattern } from '../drivers/sound/correlate.ts';
import { decodeFfmpeg, RATE } from '../drivers/sound/decode.ts';
import { hearTones, hearWords } from '../drivers/sound/hear.ts';
import { loudestWindow, samplesIn } from '../drivers/sound/level.ts';
import { trackOf } from '../drivers/sound/track-of.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

const FRAME = 24;
const QUIET_DB = -50;
const pack = voicePack();
const plan = trackOf('2 min walk; 2 x (1 min walk, 1 min run)', pack);
const { bytes, layout } = composeTrack(plan, pack);
const { holding, oneMore, coolDown } = plan.lanes;

let samples: Int16Array;
let sounds: ReadonlyMap<string, Pattern>;
beforeAll(async () => {
  [samples, sounds] = await Promise.all([decodeFfmpeg(bytes), clipSounds(pack)]);
});

const lastSound = (cues: CuePlan): number => Math.max(...cues.cues.map(({ end }) => end));
const laneOf = (lane: Lane | undefined, end: number): Int16Array =>
  samples.subarray(samplesIn(lane?.start ?? Number.NaN), samplesIn(end));
const loudest = (fromMs: number, toMs: number): number =>
  loudestWindow(samples, samplesIn(fromMs), samplesIn(toMs)).db;

describe('the lanes behind a session, decoded', () => {
  test('TRACK-6 holding says its words at its start, and one every two minutes', () => {
    const heard = hearWords(laneOf(layout.holding, layout.oneMore.start), holding, sounds);
    expect(heard.length).toBeGreaterThanOrEqual(15);
    expect(heard.filter(({ match }) => match < 0.95)).toEqual([]);
    expect(heard.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
    expect(heard[0]?.plannedMs).toBeLessThan(1000);
  });

  test('TRACK-8 one minute more says so, and then nothing for the whole minute', () => {
    const next = layout.coolDown?.start ?? layout.total;
    const heard = hearWords(laneOf(layout.oneMore, next), oneMore, sounds);
    expect(heard.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
    const { start, end } = layout.oneMore.minute;
    expect(end - start).toBe(60_000);
    expect(loudest(start + 100, end)).toBeLessThan(QUIET_DB);
  });

  test('TRACK-7 the cool-down that the plan lacks is heard like a session of its own', () => {
    if (!coolDown || !layout.coolDown) throw new Error('this plan has no cool-down');
    const lane = laneOf(layout.coolDown, layout.total);
    const words = hearWords(lane, coolDown, sounds);
    expect(words.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
    const tones = hearTones(lane, coolDown);
    expect(tones.heard.length).toBe(tones.planned.length);
    expect(tones.lateMs.filter((late) => Math.abs(late) > FRAME)).toEqual([]);
    expect(words.at(-1)?.clip).toBe('phrase.finish');
    expect(words.at(-1)?.plannedMs).toBeGreaterThanOrEqual(300_000);
  });

  test.each([
    ['session', layout.session, lastSound(plan.cues), layout.holding.start],
    [
      'holding',
      layout.holding.end,
      layout.holding.start + lastSound(holding),
      layout.oneMore.start,
    ],
    [
      'one minute more',
      layout.oneMore.end,
      layout.oneMore.start + lastSound(oneMore),
      layout.coolDown?.start ?? Number.NaN,
    ],
    [
      'cool-down',
      layout.coolDown?.end ?? Number.NaN,
      (layout.coolDown?.start ?? Number.NaN) + lastSound(coolDown ?? oneMore),
      layout.total,
    ],
  ])('TRACK-6 two minutes of true quiet follow: %s', (_, end, sound, next) => {
    expect(next - end).toBeGreaterThanOrEqual(120_000);
    expect(loudest(Math.max(end, sound + 100), next)).toBeLessThan(QUIET_DB);
  });

  test('TRACK-6 the decoded track is as long as its layout says', () => {
    expect(samples.length / RATE).toBe(layout.total / 1000);
  });
});
