import { expect } from 'vitest';
import { common } from '../../src/copy/common.ts';
import { groups } from '../../src/copy/groups.ts';
import { nowCopy as now } from '../../src/copy/now.ts';
import { weeks } from '../../src/copy/weeks.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { journey } from '../drivers/browser/journey.ts';
import { followMarshMile, visit } from '../drivers/browser/visit.ts';
import { compressed, firstLoad, laterLoad, laterScreens } from '../drivers/built.ts';

/**
 * What is loaded "when needed" may be needed at once. Each such file is taken away in turn: those
 * without which the welcome and its list of groups do not come belong to the first load.
 */
journey(
  'OFF-1 with every file that the first screens cannot do without, the first load is at most 110 kB',
  async ({ page, site, browser }) => {
    const session = await browser.context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.setCacheDisabled', { cacheDisabled: true });
    // Without a worker nothing but the page itself asks for files.
    site.replace('/sw.js', 'throw new Error("none here")');
    const comes = async (): Promise<boolean> => {
      await page.goto(site.url);
      const link = page.getByRole('link', { name: welcome.choose }).first();
      return link
        .click({ timeout: 4000 })
        .then(() => page.getByText(groups.lead).waitFor({ timeout: 4000 }))
        .then(
          () => true,
          () => false,
        );
    };
    expect(await comes()).toBe(true);
    const needed: string[] = [];
    for (const file of laterLoad()) {
      site.replace(`/${file}`, file.endsWith('.css') ? '' : 'throw new Error("taken away")');
      await page.goto('about:blank');
      if (!(await comes())) needed.push(file);
      site.replace(`/${file}`, null);
    }
    const all = [...firstLoad(), ...needed].map((file) => ({ file, bytes: compressed(file) }));
    expect(needed).not.toEqual(laterLoad());
    console.table(all);
    expect(all.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(110_000);
  },
  { expected: /./ },
);

/** Runs in the page, before its own scripts: when the frame began that first shows its title. */
function noteFirstFrame(): void {
  const seen = new MutationObserver(() => {
    if (document.querySelector('main h1') === null) return;
    seen.disconnect();
    requestAnimationFrame(() => performance.mark('first page drawn'));
  });
  seen.observe(document, { childList: true, subtree: true });
}

journey(
  'OFF-12 on a first visit and when one comes back, the later screens are asked for behind the first page',
  async ({ page, site }) => {
    await page.addInitScript(noteFirstFrame);
    const asked = async (): Promise<{ drawn: number; later: number }> => {
      await page.waitForFunction(
        (file) => performance.getEntriesByName(new URL(file, document.baseURI).href).length > 0,
        laterScreens(),
      );
      return await page.evaluate((file) => {
        const [later] = performance.getEntriesByName(new URL(file, document.baseURI).href);
        const [drawn] = performance.getEntriesByName('first page drawn');
        return { drawn: drawn?.startTime ?? Number.NaN, later: later?.startTime ?? Number.NaN };
      }, laterScreens());
    };
    await page.goto(site.url);
    const first = await asked();
    expect(first.later).toBeGreaterThan(first.drawn);
    await visit(page, site);
    await followMarshMile(page);
    await page.reload();
    const back = await asked();
    expect(back.later).toBeGreaterThan(back.drawn);
  },
);

journey(
  'OFF-12 when they do not come the page says so, every session is named below, and another try fetches them',
  async ({ page, site, browser }) => {
    site.replace('/sw.js', 'throw new Error("none here")');
    await page.goto(site.url);
    await page.getByRole('link', { name: welcome.choose }).first().click();
    const wren = page.getByRole('button', { name: groups.choose('Wren') });
    await wren.click();
    await page.getByRole('heading', { name: weeks.session(1, 1) }).waitFor();
    const later = `**/${laterScreens()}`;
    await browser.context.route(later, (route) => route.abort());
    await page.reload();
    await page.getByText(common.missing.body).waitFor();
    expect(await page.locator('.weeks .session-link').count()).toBeGreaterThan(6);
    await browser.context.unroute(later);
    await page.getByRole('button', { name: common.missing.again }).press('Enter');
    await page.getByRole('heading', { name: now.title }).waitFor();
    // By keyboard one goes on where the button was.
    await page.locator('main .card :focus').waitFor();
    expect(await page.getByText(common.missing.body).count()).toBe(0);
  },
  { expected: /./ },
);
