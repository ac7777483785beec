/** Where the focus is, as a person with a keyboard sees it. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/**
 * Why the focus cannot be seen, or nothing: there is no ring of 2 px or more around it (WCAG 2.2,
 * 2.4.7, and the width of 2.4.13), or something lies over the middle of it (2.4.11, which asks
 * only that not all of it is hidden).
 */
export const unseen = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLElement | null;
    if (at === null || at === document.body) return '';
    // A heading or a page that was moved to is not a control, and has no ring.
    if (at.tabIndex < 0) return '';
    // The parts of a day or a time are the browser's own, and so are their rings.
    if (['date', 'time'].includes((at as HTMLInputElement).type)) return '';
    const label = at.closest('label') ?? (at as HTMLInputElement).labels?.[0] ?? null;
    const ringed = [at, at.nextElementSibling, label, at.parentElement].some((each) => {
      if (each === null) return false;
      const { outlineStyle, outlineWidth } = getComputedStyle(each);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
    });
    const what = at.outerHTML.slice(0, 120);
    if (!ringed) return `no ring: ${what}`;
    const own = at.getBoundingClientRect();
    // What is there for readers alone is seen by its label.
    const shown = own.width > 1 || label === null ? at : label;
    const box = shown.getBoundingClientRect();
    const [left, right] = [Math.max(box.left, 0), Math.min(box.right, innerWidth)];
    const [top, bottom] = [Math.max(box.top, 0), Math.min(box.bottom, innerHeight)];
    if (right <= left || bottom <= top) return `out of sight: ${what}`;
    const over = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    const isIt = over !== null && (shown.contains(over) || over.contains(shown) || label === over);
    return isIt ? '' : `covered by ${over?.outerHTML.slice(0, 80)}: ${what}`;
  });

/** The page of this heading is there, and the focus is at its top: its heading or its main part. */
export async function arrived(page: Page, heading: string | RegExp): Promise<void> {
  const exact = typeof heading === 'string';
  await page.getByRole('heading', { level: 1, name: heading, exact }).waitFor();
  await atTheTop(page);
}

/** The focus is on the heading or the main part of what has just opened. */
export const atTheTop = (page: Page): Promise<void> =>
  expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toMatch(/^(H1|MAIN)$/);

/** What has the focus, by tag and words, for telling that it was not lost. */
export const focusedText = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at === null || at === document.body ? '(lost)' : (at.textContent ?? '').trim();
  });
