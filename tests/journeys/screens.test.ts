import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { welcome } from '../../src/copy/welcome.ts';
import { contrast, faint } from '../drivers/browser/contrast.ts';
import { liveOn } from '../drivers/browser/day.ts';
import { journey } from '../drivers/browser/journey.ts';
import {
  findings,
  lost,
  moving,
  small,
  stickingOut,
  unreachable,
} from '../drivers/browser/look.ts';
import { tour } from '../drivers/browser/tour.ts';
import { treeAgainstGolden, treesOfNoStop } from '../drivers/browser/trees.ts';

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

/** Read on the way of the keyboard, before the first key. */
const otherTrees: string[] = [];
const stopsRead: string[] = [];

journey('REAL-19 every control on every screen is reached by the keyboard', async (j) => {
  await liveOn(j.page, '2027-05-11');
  const found = await collect(
    (stop) => tour(j.page, j.site, stop),
    async (name, outdoors) => {
      const lines = await treeAgainstGolden(j.page, name, outdoors);
      otherTrees.push(...lines.map((line) => `[${name}] ${line}`));
      stopsRead.push(name);
      return unreachable(j.page);
    },
  );
  expect(found).toEqual([]);
});

it('REAL-37 every screen is given to a reader as its golden tree says', () => {
  expect(stopsRead.length).toBeGreaterThan(25);
  expect(otherTrees).toEqual([]);
  expect(treesOfNoStop(stopsRead)).toEqual([]);
});

/** Looked for on the same way as what sticks out, because a way through everything takes its time. */
const seenOnTheWay: Record<'small' | 'moving' | 'lost' | 'forced', string[]> = {
  small: [],
  moving: [],
  lost: [],
  forced: [],
};
let stopsLookedAt = 0;

journey('REAL-20 no screen scrolls sideways at 320 px', async (j) => {
  await j.page.setViewportSize({ width: 320, height: 568 });
  await j.page.emulateMedia({ reducedMotion: 'reduce' });
  const found = await collect(
    (stop) => tour(j.page, j.site, stop),
    async (name, outdoors) => {
      const note = (kind: keyof typeof seenOnTheWay, lines: readonly string[]) =>
        seenOnTheWay[kind].push(...lines.map((line) => `[${name}] ${line}`));
      note('moving', await moving(j.page));
      if (outdoors) note('small', await small(j.page, 44));
      for (const colorScheme of ['light', 'dark'] as const) {
        await j.page.emulateMedia({ forcedColors: 'active', colorScheme });
        note('lost', await lost(j.page));
      }
      note('forced', await findings(j.page, false));
      await j.page.emulateMedia({ forcedColors: null, colorScheme: 'light' });
      stopsLookedAt += 1;
      return stickingOut(j.page);
    },
  );
  expect(found).toEqual([]);
});

journey(
  'REAL-36 a lost drawing, a small control and a movement are found where there is one',
  async (j) => {
    await j.page.goto(j.site.url);
    await j.page.getByText(welcome.what).waitFor();
    await j.page.emulateMedia({ forcedColors: 'active' });
    const before = await lost(j.page);
    await j.page.evaluate(() => {
      const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
      const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
      path.setAttribute('d', 'M0 0H9V9Z');
      path.setAttribute('fill', 'Canvas');
      svg.append(path);
      const button = document.createElement('button');
      button.style.cssText = 'all: unset; display: block; width: 43px; height: 60px';
      document.querySelector('main')?.append(svg, button);
      button.animate([{ opacity: 1 }, { opacity: 0.5 }], { duration: 5000 });
    });
    expect(before).toEqual([]);
    expect(await lost(j.page)).toHaveLength(1);
    expect(await moving(j.page)).toHaveLength(1);
    expect((await small(j.page, 44)).some((line) => line.startsWith('43 px'))).toBe(true);
  },
);

it('REAL-34 while running every control is at least 44 px by 44 px (WCAG 2.2, 2.5.5)', () => {
  expect(stopsLookedAt).toBeGreaterThan(25);
  expect(seenOnTheWay.small).toEqual([]);
});

it('REAL-35 nothing moves on any screen where less motion is asked for (WCAG 2.2, 2.3.3)', () => {
  expect(stopsLookedAt).toBeGreaterThan(25);
  expect(seenOnTheWay.moving).toEqual([]);
});

it('REAL-36 where colours are forced, light or dark, every drawing is told from its ground', () => {
  expect(stopsLookedAt).toBeGreaterThan(25);
  expect(seenOnTheWay.lost).toEqual([]);
});

it('REAL-18 axe finds nothing on any screen where colours are forced', () => {
  expect(stopsLookedAt).toBeGreaterThan(25);
  expect(seenOnTheWay.forced).toEqual([]);
});

journey(
  'REAL-20 no screen scrolls sideways with text at 200 %, and axe finds nothing',
  async (j) => {
    await j.page.setViewportSize({ width: 390, height: 844 });
    await j.page.addInitScript(() => {
      document.addEventListener('DOMContentLoaded', () => {
        document.documentElement.style.fontSize = '200%';
      });
    });
    const found = await collect(
      (stop) => tour(j.page, j.site, stop),
      async () => [...(await stickingOut(j.page)), ...(await findings(j.page, false))],
    );
    expect(found).toEqual([]);
  },
);
