import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { felt } from '../../src/copy/felt.ts';
import { running } from '../../src/copy/running.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import { journey } from '../drivers/browser/journey.ts';
import { heardAndSeen, listen } from '../drivers/browser/live.ts';
import { button, followMarshMile, MINUTE, openSession, visit } from '../drivers/browser/visit.ts';

/** 37 s. */
const PLAN = '7 s easy walk; 2 x (6 s run, 6 s walk); 6 s easy walk';

/** Notes the words of the voice as they come, at seconds of the sound. */
const noteVoice = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const notes: { text: string; at: number }[] = [];
    (window as unknown as { voice: typeof notes }).voice = notes;
    new MutationObserver(() => {
      const text = document.querySelector('.caption')?.textContent?.trim() ?? '';
      const at = document.querySelector('audio')?.currentTime ?? 0;
      if (text !== '' && text !== notes.at(-1)?.text) notes.push({ text, at });
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });

const voiceOf = (page: Page) =>
  page.evaluate(() => (window as unknown as { voice: { text: string; at: number }[] }).voice);

journey('REAL-47 from start to rating by ear, by roles and names alone', async (j) => {
  const { page } = j;
  const plan = parsePlan(PLAN);
  if (!plan.ok) throw new Error('the plan is none');
  const { segments } = layOut(plan.value);
  await visit(page, j.site);
  await followMarshMile(page, 'Wren', PLAN);
  await openSession(page, MINUTE);
  await button(page, before.start).waitFor();
  await listen(page);
  await noteVoice(page);
  await button(page, before.start).click();
  await button(page, running.hold).waitFor();
  // At any moment the page says on asking what is now and how long.
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('EASY WALK');
  await page.getByRole('timer', { name: new RegExp(`${running.left}$`) }).waitFor();
  await page.getByRole('heading', { level: 1, name: felt.title }).waitFor({ timeout: 90_000 });

  const voice = await voiceOf(page);
  const { said } = await heardAndSeen(page);
  console.log(`voice: ${voice.map(({ text, at }) => `${at.toFixed(1)} ${text}`).join(' | ')}`);
  console.log(`live regions: ${said.map(({ text }) => text).join(' | ') || 'nothing'}`);
  for (const { start, activity } of segments.slice(1)) {
    const near = voice.filter(({ at }) => Math.abs(at - start / 1000) < 1);
    expect(near.map(({ text }) => text.toLowerCase()).join(' ')).toContain(activity);
  }
  // Neither each second nor each change: the voice has said it, and a reader would talk over it.
  expect(said.length).toBeLessThanOrEqual(1);

  await page.getByRole('radio', { name: /^6: / }).check({ force: true });
  await page.getByRole('button', { name: felt.save }).click();
  await page.getByRole('definition').filter({ hasText: /^6: / }).waitFor();
});
