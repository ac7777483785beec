import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { journey } from '../drivers/browser/journey.ts';
import { findings, stickingOut, unreachable } from '../drivers/browser/look.ts';
import { tour } from '../drivers/browser/tour.ts';

/** Goes through every screen and collects what a look finds, by screen. */
async function collect(
  run: (stop: (name: string, outdoors: boolean) => Promise<void>) => Promise<void>,
  look: (name: string, outdoors: boolean) => Promise<readonly string[]>,
): Promise<readonly string[]> {
  const found: string[] = [];
  let stops = 0;
  await run(async (name, outdoors) => {
    stops += 1;
    for (const line of await look(name, outdoors)) found.push(`[${name}] ${line}`);
  });
  expect(stops).toBeGreaterThan(25);
  return found;
}

const dark = (page: Page): Promise<void> => page.emulateMedia({ colorScheme: 'dark' });

for (const scheme of ['light', 'dark'] as const) {
  journey(
    `REAL-18 axe finds nothing on any screen, ${scheme}; contrast is 7:1 while running`,
    async (j) => {
      if (scheme === 'dark') await dark(j.page);
      const found = await collect(
        (stop) => tour(j.page, j.site, stop),
        (_, outdoors) => findings(j.page, outdoors),
      );
      expect(found).toEqual([]);
    },
  );
}

journey('REAL-19 every control on every screen is reached by the keyboard', async (j) => {
  const found = await collect(
    (stop) => tour(j.page, j.site, stop),
    () => unreachable(j.page),
  );
  expect(found).toEqual([]);
});

journey('REAL-20 no screen scrolls sideways at 320 px', async (j) => {
  await j.page.setViewportSize({ width: 320, height: 568 });
  const found = await collect(
    (stop) => tour(j.page, j.site, stop),
    () => stickingOut(j.page),
  );
  expect(found).toEqual([]);
});

journey('REAL-20 no screen scrolls sideways with text at 200 %', async (j) => {
  await j.page.setViewportSize({ width: 390, height: 844 });
  await j.page.addInitScript(() => {
    document.addEventListener('DOMContentLoaded', () => {
      document.documentElement.style.fontSize = '200%';
    });
  });
  const found = await collect(
    (stop) => tour(j.page, j.site, stop),
    () => stickingOut(j.page),
  );
  expect(found).toEqual([]);
});
