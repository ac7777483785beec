import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { composeTrack } from '../../src/domain/track/compose.ts';
import { clipsOf } from '../../src/domain/track/placement.ts';
import { clipSounds } from '../drivers/sound/clip-sounds.ts';
import { locate, type Pattern } from '../drivers/sound/correlate.ts';
import { RATE } from '../drivers/sound/decode.ts';
import { type ListeningPage, openListeningPage } from '../drivers/sound/listening-page.ts';
import { findTones } from '../drivers/sound/tones.ts';
import { trackOf } from '../drivers/sound/track-of.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

const FRAME = 24;
const PLACES = 10;
/** How far before a tone the seek goes: not a whole number of frames. */
const BEFORE_MS = 355;

const pack = voicePack();
const plan = trackOf('5 min walk; 37 x (1 min walk, 2 min run); 4 min run', pack);
const { bytes, layout } = composeTrack(plan, pack);
const longTones = clipsOf(plan.cues).filter(({ clip }) => /^tone\.(rise|fall|level)$/.test(clip));
const step = (longTones.length - 1) / (PLACES - 1);
const chosen = Array.from({ length: PLACES }, (_, i) => longTones[Math.round(i * step)]?.at ?? 0);

let page: ListeningPage;
let sounds: ReadonlyMap<string, Pattern>;
beforeAll(async () => {
  [page, sounds] = await Promise.all([openListeningPage(bytes), clipSounds(pack)]);
});
afterAll(() => page.close());

describe('a track of more than two hours in a real browser', () => {
  test('TRACK-15 its length is told to the millisecond before anything is played', () => {
    expect(layout.total).toBeGreaterThan(2.5 * 3_600_000);
    expect(Math.abs(page.duration * 1000 - layout.total)).toBeLessThan(1);
  });

  test('TRACK-15 a seek lands where it was asked to, and the sound there is the planned one', async () => {
    const lateMs: number[] = [];
    for (const at of chosen) {
      const heard = await page.listen(at - BEFORE_MS, 1.2);
      expect(Math.abs(heard.atMs - (at - BEFORE_MS))).toBeLessThan(1);
      const tone = findTones(heard.samples)[0];
      lateMs.push(((tone?.start ?? Number.NaN) * 1000) / RATE - BEFORE_MS);
    }
    console.log(`seeks: tones late by ${lateMs.map((ms) => ms.toFixed(1)).join(', ')} ms`);
    expect(lateMs.filter((late) => !(Math.abs(late) <= FRAME))).toEqual([]);
  });

  test.each([
    ['holding', layout.holding.start, plan.lanes.holding],
    ['one minute more', layout.oneMore.start, plan.lanes.oneMore],
  ])('TRACK-15 a seek to a lane hears its first words: %s', async (_, start, lane) => {
    const first = clipsOf(lane)[0];
    const pattern = sounds.get(first?.clip ?? '');
    if (!first || !pattern) throw new Error('the lane says nothing');
    const { samples } = await page.listen(start, pattern.samples.length / RATE + 1);
    const { at, match } = locate(samples, pattern, 0, samples.length);
    expect(match).toBeGreaterThan(0.95);
    expect(Math.abs((at * 1000) / RATE - first.at)).toBeLessThanOrEqual(FRAME);
  });
});
