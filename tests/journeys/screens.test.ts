import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { contrast, faint } from '../drivers/browser/contrast.ts';
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
      let texts = 0;
      const found = await collect(
        (stop) => tour(j.page, j.site, stop, scheme),
        async (_, outdoors) => {
          const { looked, lines } = await faint(j.page, outdoors ? 7 : 4.5);
          texts += looked;
          return [...(await findings(j.page, outdoors)), ...lines];
        },
      );
      expect(texts).toBeGreaterThan(500);
      expect(found).toEqual([]);
    },
  );
}

it('REAL-18 contrast is counted as WCAG does, at its own examples', () => {
  expect(contrast([0, 0, 0], [255, 255, 255])).toBe(21);
  // The lightest grey that passes 4.5:1 on white, and the next one that does not (from memory).
  expect(contrast([118, 118, 118], [255, 255, 255])).toBeCloseTo(4.54, 2);
  expect(contrast([119, 119, 119], [255, 255, 255])).toBeCloseTo(4.48, 2);
});

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
