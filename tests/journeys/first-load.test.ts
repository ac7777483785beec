import { expect } from 'vitest';
import { groups } from '../../src/copy/groups.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { journey } from '../drivers/browser/journey.ts';
import { compressed, firstLoad, laterLoad } from '../drivers/built.ts';

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
