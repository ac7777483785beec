/** A person who has a keyboard and nothing else. */
import type { Page } from 'playwright-core';
import { unseen } from './focus.ts';

/** What has the focus, by the name that a screen reader says of it. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as (HTMLElement & { labels?: NodeList }) | null;
    if (at === null || at === document.body) return '';
    const label = at.labels?.[0]?.textContent;
    return (at.getAttribute('aria-label') ?? label ?? at.textContent ?? '')
      .replace(/\s+/g, ' ')
      .trim();
  });

/**
 * Presses Tab until what has the focus is called so; fails when a whole round leads nowhere, or
 * when the focus is somewhere on the way where it cannot be seen.
 */
export async function tabTo(page: Page, name: string | RegExp, presses = 150): Promise<void> {
  const seen: string[] = [];
  for (let press = 0; press < presses; press += 1) {
    const now = await focused(page);
    if (typeof name === 'string' ? now === name : name.test(now)) return;
    seen.push(now);
    await page.keyboard.press('Tab');
    const why = await unseen(page);
    if (why !== '') throw new Error(`After ${now}: the focus is not seen, ${why}`);
  }
  throw new Error(`Tab does not lead to ${name}. It led to:\n${seen.join('\n')}`);
}

/** Tab to it, then Enter. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

/** Tab to a field, and type in the place of what stands there. */
export async function typeInto(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}
