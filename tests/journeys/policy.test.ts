import type { Page, Worker } from 'playwright-core';
import { expect } from 'vitest';
import { install } from '../../src/copy/install.ts';
import { type Journey, journey } from '../drivers/browser/journey.ts';

const ELSEWHERE = 'https://elsewhere.example/';

/** What was refused since the last look, once there is something. */
async function refused({ browser }: Journey, what: RegExp): Promise<void> {
  await expect
    .poll(() => browser.violations.some((each) => what.test(each)), { timeout: 5000 })
    .toBe(true);
  browser.violations.length = 0;
}

/** Runs in the page or in a worker. */
const ask = (to: string): Promise<string> =>
  fetch(to).then(
    () => 'answered',
    () => 'refused',
  );
const asks = (from: Page | Worker): Promise<string> => (from as Worker).evaluate(ask, ELSEWHERE);

journey(
  'SAFE-1 whatever the policy refuses in a page, its worker or the service worker fails a journey',
  async (j) => {
    const { page, browser, site } = j;
    await page.goto(site.url);
    await page.getByText(install.offlineReady).waitFor();
    expect(browser.violations).toEqual([]);

    // An element's content as a text: Trusted Types.
    const threw = await page.evaluate(() => {
      try {
        document.body.innerHTML = '<b>hello</b>';
        return false;
      } catch {
        return true;
      }
    });
    expect(threw).toBe(true);
    await refused(j, /trusted/i);

    // A look that no file of ours has, as something that was let in would bring it.
    await page.evaluate(() => {
      document.body.setAttribute('style', 'color: red');
    });
    await refused(j, /style-src/);

    expect(await asks(page)).toBe('refused');
    await refused(j, /connect-src/);

    const [service] = browser.context.serviceWorkers();
    if (service === undefined) throw new Error('no service worker');
    expect(await asks(service)).toBe('refused');
    await refused(j, /^worker: .*(connect-src|elsewhere)/);

    const file = site.files.find((each) => /assets\/worker-[\w-]+\.js$/.test(each));
    const [worker] = await Promise.all([
      page.waitForEvent('worker'),
      page.evaluate((address) => {
        const own = window.trustedTypes?.createPolicy('app-intake', {
          createScriptURL: (asked) => asked,
        });
        new Worker(own?.createScriptURL(address) as unknown as string, { type: 'module' });
      }, `./${file}`),
    ]);
    expect(await asks(worker)).toBe('refused');
    await refused(j, /^worker: .*(connect-src|elsewhere)/);

    // And left as it is found, it is what closing the browser throws.
    expect(await asks(page)).toBe('refused');
    await expect.poll(() => browser.violations.length, { timeout: 5000 }).toBeGreaterThan(0);
    await expect(browser.close()).rejects.toThrow("against the page's policy");
    browser.violations.length = 0;
  },
  { expected: /./ },
);
