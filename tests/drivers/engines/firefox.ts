/** Debian's Firefox ESR, by WebDriver BiDi. */
import { readdirSync } from 'node:fs';
import puppeteer, { type Browser, type Page } from 'puppeteer-core';
import type { Profile } from '../browser/browser.ts';
import { until } from './person.ts';
import { asText, type Engine, type Opened, type Tab } from './tab.ts';

export const firefox: Engine = {
  name: 'Firefox',
  keepsProfile: true,
  async open(profile) {
    const browser = await puppeteer.launch({
      browser: 'firefox',
      executablePath: '/usr/bin/firefox-esr',
      userDataDir: profile.folder,
      headless: true,
      protocolTimeout: 60_000,
      timeout: 60_000,
      defaultViewport: null,
      args: ['--width=390', '--height=844'],
      env: { ...process.env, LANG: 'en_GB.UTF-8' },
    });
    const page = (await browser.pages())[0] ?? (await browser.newPage());
    page.setDefaultTimeout(15_000);
    return { tab: tabOf(browser, page), ...endsOf(browser, profile) };
  },
};

function tabOf(browser: Browser, page: Page): Tab {
  const run: Tab['run'] = async (job, ...args) => page.evaluate(asText(job, args)) as never;
  return {
    goto: async (url) => void (await page.goto(url)),
    reload: async () => void (await page.reload()),
    run,
    press: (css) => page.click(css),
    type: (css, text) => page.type(css, text),
    async give(css, path) {
      const field = await page.$(css);
      await (field as unknown as { uploadFile(path: string): Promise<void> }).uploadFile(path);
    },
    async hide() {
      const other = await browser.newPage();
      await other.bringToFront();
    },
    show: () => page.bringToFront(),
    picture: () => page.screenshot(),
  };
}

function endsOf(browser: Browser, { folder }: Profile): Omit<Opened, 'tab'> {
  const child = browser.process();
  const gone = new Promise<void>((resolve) => child?.once('exit', () => resolve()));
  /**
   * The driver puts the settings that it replaced back once the browser is gone, and tells nobody
   * when it has: another browser on the same profile must not begin between.
   */
  const settingsBack = (): Promise<unknown> =>
    until('the settings of the profile to be put back', async () =>
      readdirSync(folder).some((name) => name.endsWith('.puppeteer')) ? undefined : true,
    );
  return {
    async kill() {
      // With the processes of its pages, which are in its group: they may write when it is gone.
      if (child?.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      await gone;
      await browser.disconnect().catch(() => {});
      await settingsBack();
    },
    close: () => browser.close(),
  };
}
