import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { felt } from '../../src/copy/felt.ts';
import { weeks } from '../../src/copy/weeks.ts';
import { journey } from '../drivers/browser/journey.ts';
import { heardAndSeen, listen } from '../drivers/browser/live.ts';
import { button, MINUTE, openWatched } from '../drivers/browser/visit.ts';

/** 10 s easy walk; 2 x (8 s run, 8 s walk); 10 s easy walk, as a person would note it down. */
const PLAN = [
  { start: 0, now: 'EASY WALK', left: 10, next: 'then RUN 0:08', said: 'easy walk, 10 seconds' },
  { start: 10, now: 'RUN', left: 8, next: 'then WALK 0:08', said: 'run, 8 seconds' },
  { start: 18, now: 'WALK', left: 8, next: 'then RUN 0:08', said: 'walk, 8 seconds' },
  { start: 26, now: 'RUN', left: 8, next: 'then WALK 0:08', said: 'run, 8 seconds' },
  { start: 34, now: 'WALK', left: 8, next: 'then EASY WALK 0:10', said: 'walk, 8 seconds' },
  { start: 42, now: 'EASY WALK', left: 10, next: 'then the end', said: 'easy walk, 10 seconds' },
];

/** "0:08", or a single number while it counts down. */
const secondsOf = (text: string): number => Number(text.split(':').at(-1));

journey(
  'REAL-39, REAL-40 without sound the screen says now, how long and what then at every change, and a reader says each once',
  async (j) => {
    const { page } = j;
    await openWatched(page, j.site, MINUTE);
    await page.getByRole('heading', { level: 1, name: weeks.session(1, 1) }).waitFor();
    await listen(page);
    const asked = await page.evaluate(() => performance.now() / 1000);
    await button(page, before.startSilent).click();
    await page.getByRole('heading', { level: 1, name: 'EASY WALK' }).waitFor();
    await page.getByRole('heading', { level: 1, name: felt.title }).waitFor({ timeout: 90_000 });
    const { said, shown } = await heardAndSeen(page);

    const parts = shown.filter(({ now, next }) => now === now.toUpperCase() && next !== '');
    expect(parts.map(({ now, next }) => ({ now, next }))).toEqual(
      PLAN.map(({ now, next }) => ({ now, next })),
    );
    const begun = parts[0]?.at ?? asked;
    for (const [n, { left, at }] of parts.entries()) {
      const planned = PLAN[n];
      expect(Math.abs(secondsOf(left) - (planned?.left ?? Number.NaN))).toBeLessThanOrEqual(1);
      expect(Math.abs(at - begun - (planned?.start ?? Number.NaN))).toBeLessThan(1);
    }

    // A reader says each change, at the change, and hardly anything besides over the 52 s.
    const words = new Set(PLAN.map((part) => part.said));
    const changes = said.filter(({ text }) => words.has(text));
    const besides = said.filter(({ text }) => !words.has(text));
    console.log(
      `said: ${changes.length} changes; besides: ${besides.map((s) => s.text).join(' | ')}`,
    );
    expect(changes.map(({ text }) => text)).toEqual(PLAN.map((part) => part.said));
    for (const [n, { at }] of changes.entries())
      expect(Math.abs(at - begun - (PLAN[n]?.start ?? Number.NaN))).toBeLessThan(1);
    expect(besides.length).toBeLessThanOrEqual(2);

    // On to the answer by roles and names alone.
    await page.getByRole('radio', { name: /^6: / }).check({ force: true });
    await page.getByRole('button', { name: felt.save }).click();
    await page.getByRole('heading', { level: 1, name: /20\d\d/ }).waitFor();
    await page.getByRole('definition').filter({ hasText: /^6: / }).waitFor();
  },
  { switches: ['--mute-audio'] },
);
