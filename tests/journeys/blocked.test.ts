import { expect } from 'vitest';
import { felt } from '../../src/copy/felt.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { keepTrack, loudest, trackOf } from '../drivers/browser/track.ts';
import { heard, MINUTE, moveTo, startOn } from '../drivers/browser/visit.ts';

const SESSION = 52;

journey(
  'REAL-6 a page that is blocked for a minute at the end lets nothing but quiet be heard',
  async (j) => {
    await keepTrack(j.page);
    await startOn(j.page, j.site, MINUTE);
    const track = await trackOf(j.page);
    await moveTo(j.page, SESSION - 3);
    await seconds(0.5);
    const { before, after } = await j.page.evaluate(() => {
      const audio = document.querySelector('audio') as HTMLAudioElement;
      const start = { at: audio.currentTime, clock: performance.now() / 1000 };
      while (performance.now() / 1000 - start.clock < 60);
      return { before: start, after: { at: audio.currentTime, clock: performance.now() / 1000 } };
    });
    expect(after.clock - before.clock).toBeGreaterThanOrEqual(60);
    // The element's own clock is read in the blocked task, so it may not have been told anew yet.
    const woken = await heard(j.page).catch(() => undefined);
    const reached = Math.max(after.at, woken?.at ?? 0, before.at + 60);
    console.log(
      `blocked from ${before.at.toFixed(1)} s; the sound went on to ${reached.toFixed(1)} s`,
    );

    // What was in the track there, by an independent decoder: the end's words, then quiet alone.
    const words = loudest(track, SESSION - 1, SESSION + 8);
    const quiet = loudest(track, SESSION + 10, reached + 30);
    console.log(`loudest: end ${words.toFixed(1)} dBFS, after it ${quiet.toFixed(1)} dBFS`);
    expect(words).toBeGreaterThan(-20);
    expect(quiet).toBeLessThan(-45);

    await j.page.getByRole('heading', { level: 1, name: felt.title }).waitFor();
  },
);
