import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { felt } from '../../src/copy/felt.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { button, MINUTE, openWatched, startOn } from '../drivers/browser/visit.ts';
import { ROOT } from '../drivers/tree.ts';

const PICTURES = join(ROOT, '.cache/journeys/watching');

/** 10 s easy walk; 2 x (8 s run, 8 s walk); 10 s easy walk, as a person would note it down. */
const PLAN = [
  { word: 'EASY WALK', start: 0, end: 10 },
  { word: 'RUN', start: 10, end: 18 },
  { word: 'WALK', start: 18, end: 26 },
  { word: 'RUN', start: 26, end: 34 },
  { word: 'WALK', start: 34, end: 42 },
  { word: 'EASY WALK', start: 42, end: 52 },
];

interface Glance {
  readonly clock: number;
  readonly text: string;
  readonly shape: string;
}

const glance = (page: Page): Promise<Glance> =>
  page.evaluate(() => {
    const main = document.querySelector('main');
    return {
      clock: performance.now() / 1000,
      text: main?.innerText ?? '',
      shape: main?.getAttribute('data-shape') ?? '',
    };
  });

journey(
  'REAL-16 a whole session can be followed by eyes alone',
  async (j) => {
    mkdirSync(PICTURES, { recursive: true });
    const { page } = j;
    await openWatched(page, j.site, MINUTE);
    await button(page, before.startSilent).click();
    await page.locator('main.watch').waitFor();
    const begun = await page.evaluate(() => performance.now() / 1000);

    const seen: Glance[] = [];
    let picture = 0;
    while (!page.url().includes('/felt/')) {
      const now = await glance(page);
      seen.push(now);
      if (now.clock - begun > picture * 4) {
        picture += 1;
        await page.screenshot({ path: join(PICTURES, `${String(picture).padStart(2, '0')}.png`) });
      }
      await seconds(0.2);
      if (now.clock - begun > 70) break;
    }
    await page.getByRole('heading', { level: 1, name: felt.title }).waitFor();
    expect(await page.evaluate(() => document.querySelector('audio')?.currentTime ?? 0)).toBe(0);

    // Every part is announced by the last three seconds as numbers and by a shape at its start.
    for (const segment of PLAN.slice(1)) {
      const around = seen.filter(
        ({ clock }) => clock - begun > segment.start - 4 && clock - begun < segment.start + 3,
      );
      const shapes = around.map(({ shape }) => shape);
      for (const count of ['count-3', 'count-2', 'count-1']) expect(shapes).toContain(count);
      const after = around.filter(({ clock }) => clock - begun > segment.start + 1.2);
      expect(after.some(({ text }) => text.includes(segment.word))).toBe(true);
    }
  },
  { switches: ['--mute-audio'] },
);

journey('REAL-17 the screen is within half a second of the sound at every change', async (j) => {
  const { page } = j;
  await startOn(page, j.site, MINUTE);
  await page.evaluate(() => {
    const notes: { word: string; at: number }[] = [];
    (window as unknown as { notes: typeof notes }).notes = notes;
    const look = (): void => {
      const word = document.querySelector('h1')?.textContent ?? '';
      const audio = document.querySelector('audio');
      if (audio && notes.at(-1)?.word !== word) notes.push({ word, at: audio.currentTime });
      requestAnimationFrame(look);
    };
    look();
  });
  await page.waitForURL(/#\/felt\//, { timeout: 60_000 });
  const notes = await page.evaluate(
    () => (window as unknown as { notes: { word: string; at: number }[] }).notes,
  );
  const changes = notes.slice(1, PLAN.length);
  console.log(changes.map(({ word, at }) => `${word} ${at.toFixed(2)}`).join(', '));
  expect(changes.map(({ word }) => word)).toEqual(PLAN.slice(1).map(({ word }) => word));
  for (const [index, { at }] of changes.entries()) {
    expect(Math.abs(at - (PLAN[index + 1]?.start ?? Number.NaN))).toBeLessThan(0.5);
  }
});
