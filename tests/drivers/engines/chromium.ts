/** Debian's Chromium, by its own protocol. */
import { openBrowser } from '../browser/browser.ts';
import { asText, type Engine } from './tab.ts';

export const chromium: Engine = {
  name: 'Chromium',
  keepsProfile: true,
  async open(profile) {
    const browser = await openBrowser(profile);
    const page = await browser.tab();
    return {
      kill: () => browser.kill(),
      close: () => browser.close(),
      tab: {
        goto: async (url) => void (await page.goto(url)),
        reload: async () => void (await page.reload()),
        run: (job, ...args) => page.evaluate(asText(job, args)),
        press: (css) => page.click(css, { timeout: 3000 }),
        type: (css, text) => page.fill(css, text),
        give: (css, path) => page.setInputFiles(css, path),
        async hide() {
          const other = await browser.tab();
          await other.goto('about:blank');
          await other.bringToFront();
        },
        show: () => page.bringToFront(),
        picture: () => page.screenshot({ timeout: 5000 }),
      },
    };
  },
};
