/** A journey: the built app on a site of its own, in a browser with a profile of its own. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { ROOT } from '../tree.ts';
import { newProfile, openBrowser, type RealBrowser } from './browser.ts';
import { openSite, type Site } from './site.ts';

export interface Journey {
  readonly site: Site;
  /** The tab that the journey began in, or the one after the latest restart. */
  page: Page;
  browser: RealBrowser;
  /** A further tab of the same browser. */
  newTab(): Promise<Page>;
  /** Has the journey fail when a page of another browser complains. */
  watch(page: Page): Page;
  /** Ends the browser at once with SIGKILL. */
  kill(): Promise<void>;
  /** A new browser on the same profile; the page is at no address yet. */
  restart(): Promise<Page>;
  /** What the pages complained of; empty unless something is wrong. */
  readonly complaints: readonly string[];
}

interface Options {
  /** The path that the app stands under. */
  readonly base?: string;
  readonly switches?: readonly string[];
  /** Complaints that the journey itself brings about. */
  readonly expected?: RegExp;
}

/** One test in a real browser. On failure a picture of the page is left under `.cache/journeys`. */
export function journey(
  title: string,
  job: (journey: Journey) => Promise<void>,
  options: Options = {},
): void {
  it(title, async () => {
    const site = await openSite(options.base === undefined ? {} : { base: options.base });
    const profile = newProfile();
    const complaints: string[] = [];
    const watch = (page: Page): Page => {
      page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
      page.on('console', (line) => {
        if (line.type() === 'error') complaints.push(line.text());
      });
      return page;
    };
    const browser = await openBrowser(profile, options.switches);
    const self: Journey = {
      site,
      browser,
      page: watch(await browser.tab()),
      complaints,
      watch,
      newTab: async () => watch(await self.browser.tab()),
      kill: () => self.browser.kill(),
      async restart() {
        self.browser = await openBrowser(profile, options.switches);
        self.page = watch(await self.browser.tab());
        return self.page;
      },
    };
    try {
      await job(self);
      const own = complaints.filter((line) => !(options.expected?.test(line) ?? false));
      expect(own).toEqual([]);
    } catch (error) {
      await picture(self.page, title).catch(() => {});
      if (complaints.length > 0) console.log(`The page said:\n${complaints.join('\n')}`);
      throw error;
    } finally {
      try {
        await self.browser.close();
      } finally {
        profile.remove();
        await site.close();
      }
    }
  });
}

async function picture(page: Page, title: string): Promise<void> {
  const folder = join(ROOT, '.cache/journeys');
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${title.replace(/\W+/g, '-').slice(0, 80)}.png`);
  await page.screenshot({ path, timeout: 5000 });
  console.log(`${page.url()}\n${(await page.innerText('body', { timeout: 2000 })).slice(0, 600)}`);
}

export const seconds = (count: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, count * 1000));

/** Kills the browser and opens the app again on the same profile, some seconds later. */
export async function killAndReturn(j: Journey, away = 0): Promise<Page> {
  await j.kill();
  await seconds(away);
  const page = await j.restart();
  await page.goto(j.site.url);
  return page;
}
