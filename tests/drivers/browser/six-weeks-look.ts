/** What is looked at on the way through six weeks, and the pictures that are left of it. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { ROOT } from '../tree.ts';
import { findings, stickingOut } from './look.ts';

const FOLDER = join(ROOT, '.cache/six-weeks');
const HEIGHT = 844;

/** The page as it stands, whole. */
export async function picture(page: Page, name: string): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: join(FOLDER, `${name}.png`), fullPage: true });
}

/**
 * Nothing that axe finds and nothing that sticks out, at 320 and at 390 px.
 *
 * @param appearance both: the same once more in the dark
 */
export async function look(
  page: Page,
  name: string,
  appearance: 'light' | 'both' = 'light',
): Promise<void> {
  await page.getByRole('heading', { level: 1 }).waitFor();
  for (const width of [320, 390]) {
    await page.setViewportSize({ width, height: HEIGHT });
    // Strips and plots take the new width a moment after the page has it.
    await expect.poll(() => stickingOut(page), { message: `${name} at ${width} px` }).toEqual([]);
  }
  await picture(page, name);
  expect(await findings(page, false), name).toEqual([]);
  if (appearance === 'light') return;
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(() => page.evaluate(() => document.documentElement.dataset.theme)).toBe('dark');
  await picture(page, `${name}-dark`);
  expect(await findings(page, false), `${name} in the dark`).toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
}
