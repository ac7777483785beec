/** A next version of the built app, and a browser that finds it. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { textOf } from '../built.ts';

/** What changes with it, by path: another page, and a service worker that lists it. */
export function nextVersion(): Readonly<Record<'sw.js' | 'index.html', string>> {
  const listed = /\{[^{}]*"?url"?:"index\.html"[^{}]*\}/;
  const worker = textOf('sw.js');
  expect(worker).toMatch(listed);
  const page = textOf('index.html');
  return {
    'sw.js': worker.replace(listed, '{"revision":"next","url":"index.html"}'),
    'index.html': page.replace('<head>', '<head><meta name="version" content="next">'),
  };
}

/** The browser asks for a new version, as it does at every opening; settled when one waits. */
export async function lookForUpdate(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration?.update();
    while (!registration?.waiting) await new Promise((resolve) => setTimeout(resolve, 100));
  });
  // The page hears of it a moment later.
  await page.waitForTimeout(1000);
}
