/** Debian's Firefox ESR, by WebDriver BiDi. */
import puppeteer, { type Browser, type Page } from 'puppeteer-core';
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
    return { tab: tabOf(browser, page), ...endsOf(browser) };
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

function endsOf(browser: Browser): Omit<Opened, 'tab'> {
  const child = browser.process();
  const gone = new Promise<void>((resolve) => child?.once('exit', () => resolve()));
  return {
    async kill() {
      child?.kill('SIGKILL');
      await gone;
      await browser.disconnect().catch(() => {});
    },
    close: () => browser.close(),
  };
}
