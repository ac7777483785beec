import { beforeAll, describe, expect, test } from 'vitest';
import { composeExport } from '../../src/domain/track/compose.ts';
import { FRAME_SAMPLES } from '../../src/domain/track/frame.ts';
import { entryOf } from '../../src/domain/track/pack.ts';
import { startFrame } from '../../src/domain/track/placement.ts';
import { ms } from '../../src/domain/units.ts';
import { clipsAlone } from '../drivers/sound/clip-sounds.ts';
import { decodeFfmpeg } from '../drivers/sound/decode.ts';
import { levelDb, loudestWindow, peakDb, samplesIn } from '../drivers/sound/level.ts';
import { planOf } from '../drivers/sound/synthetic-pack.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/** Frames before and after a clip in which the filters still know of the other sound. */
const AROUND = 3 * FRAME_SAMPLES;

const pack = voicePack();
const clips = Object.entries(pack.manifest.clips);
/** Nearer than the lead-in of any clip, so that frames have to give way. */
const CLOSE_MS = 24;
/** Every clip once, each at another place of the quiet loop and off the frame by another amount. */
const placed = clips.map(([clip, { lengthMs }], i) => ({
  clip,
  lengthMs,
  at: ms(2000 + 5007 * i),
}));
const plan = planOf(placed, pack, 5007 * clips.length + 5000);

let samples: Int16Array;
let alone: ReadonlyMap<string, Int16Array>;
beforeAll(async () => {
  [samples, alone] = await Promise.all([decodeFfmpeg(composeExport(plan, pack)), clipsAlone(pack)]);
});

/** What is left of the composed sound around a clip when the clip's own sound is taken away. */
function leftOver(clip: string, at: number): Int16Array {
  const entry = pack.manifest.clips[clip];
  const own = alone.get(clip);
  if (!entry || !own) throw new Error(`no ${clip}`);
  const start = startFrame(entry, ms(at)) * FRAME_SAMPLES;
  const around = samples.slice(start - AROUND, start + entry.frames * FRAME_SAMPLES + AROUND);
  own.forEach((sample, i) => {
    const n = AROUND + i;
    if (n < around.length) around[n] = (around[n] ?? 0) - sample;
  });
  return around;
}

describe('clips copied into quiet', () => {
  test('TRACK-14 leave nothing at their joins that the quiet loop has not by itself', () => {
    const quiet = samples.subarray(samplesIn(plan.total + 10_000), samplesIn(plan.total + 70_000));
    const peak = peakDb(quiet, 0, quiet.length);
    const level = loudestWindow(quiet, 0, quiet.length, 5).db;
    const left = placed.map(({ clip, at }) => {
      const rest = leftOver(clip, at);
      return {
        clip,
        peak: peakDb(rest, 0, rest.length),
        level: loudestWindow(rest, 0, rest.length, 5).db,
      };
    });
    const worst = left.reduce((a, b) => (b.peak > a.peak ? b : a));
    console.log(
      `joins: quiet loop ${levelDb(quiet, 0, quiet.length).toFixed(1)} dBFS, peak ${peak.toFixed(1)}; ` +
        `most left at a join ${worst.peak.toFixed(1)} dBFS (${worst.clip})`,
    );
    expect(left.filter((each) => each.peak > peak + 3)).toEqual([]);
    expect(left.filter((each) => each.level > level + 3)).toEqual([]);
  });

  test('TRACK-4 are heard whole to their last sound, with the next one right behind them', async () => {
    let at = 1000;
    const touching = placed.map(({ clip, lengthMs }) => {
      const here = { clip, at: ms(at), lengthMs };
      at += lengthMs + CLOSE_MS;
      return here;
    });
    const close = planOf(touching, pack, at);
    const decoded = await decodeFfmpeg(composeExport(close, pack));
    const lost = touching.map(({ clip, at: start, lengthMs }) => {
      const own = alone.get(clip) ?? new Int16Array();
      const { onsetMs } = entryOf(pack.manifest, clip);
      const from = startFrame(entryOf(pack.manifest, clip), start) * FRAME_SAMPLES;
      const [a, b] = [samplesIn(onsetMs + lengthMs - 40), samplesIn(onsetMs + lengthMs)];
      const heard = decoded.slice(from + a, from + b);
      const rest = heard.map((sample, i) => sample - (own[a + i] ?? 0));
      return { clip, db: peakDb(rest, 0, rest.length) };
    });
    expect(lost.filter(({ db }) => db > -45)).toEqual([]);
  });
});
