import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { running } from '../../src/copy/running.ts';
import { type Journey, journey, seconds } from '../drivers/browser/journey.ts';
import { button, goOn, heard, moveTo, SEVERAL, startOn } from '../drivers/browser/visit.ts';

const PLACE = 30;
const HOLDING_FROM = 290 + 120;

const title = (page: Page, name: string) => page.getByRole('heading', { level: 1, name });
const onAudio = {
  pause: (page: Page) => page.evaluate(() => document.querySelector('audio')?.pause()),
  play: (page: Page) => page.evaluate(() => document.querySelector('audio')?.play()),
  rate: (page: Page, rate: number) =>
    page.evaluate((to) => {
      const audio = document.querySelector('audio');
      if (audio) audio.playbackRate = to;
    }, rate),
  breakSource: (page: Page) =>
    page.evaluate(() => {
      const audio = document.querySelector('audio');
      if (audio) audio.src = 'blob:null/nothing-is-here';
    }),
};

/** Freezes a hidden page as a phone does, for some seconds. */
async function freeze({ page, browser, newTab }: Journey, length: number): Promise<void> {
  const other = await newTab();
  await other.bringToFront();
  await seconds(0.5);
  const session = await browser.context.newCDPSession(page);
  await session.send('Page.setWebLifecycleState', { state: 'frozen' });
  await seconds(length);
  await session.send('Page.setWebLifecycleState', { state: 'active' });
  await page.bringToFront();
}

/** One row of the table: what happens, what is said, how a person answers, where it goes on. */
interface Row {
  readonly state: 'running' | 'holding';
  readonly event: string;
  readonly happens: (j: Journey) => Promise<unknown>;
  readonly says: string;
  readonly answer?: (page: Page) => Promise<unknown>;
  /** Where the sound then is, in seconds from the place at which it happened. */
  readonly lands: readonly [number, number];
}

const ROWS: readonly Row[] = [
  {
    state: 'running',
    event: 'the system pauses the element',
    happens: ({ page }) => onAudio.pause(page),
    says: running.interruptedTitle,
    answer: goOn,
    lands: [-3.2, 1],
  },
  {
    state: 'running',
    event: 'the system pauses the element and a person stops for good reason',
    happens: async ({ page }) => {
      await onAudio.pause(page);
      await title(page, running.interruptedTitle).waitFor();
      await button(page, running.wrong).click();
      await page.getByRole('dialog').getByRole('button').first().click();
    },
    says: running.holdingTitle,
    answer: goOn,
    lands: [-3.2, 1],
  },
  {
    state: 'running',
    event: 'the sound stands although it should play',
    happens: ({ page }) => onAudio.rate(page, 0),
    says: running.stalledTitle,
    answer: goOn,
    lands: [-3.2, 1],
  },
  {
    state: 'running',
    event: 'the sound stands for a moment only',
    happens: async ({ page }) => {
      await onAudio.rate(page, 0);
      await seconds(1.5);
      await onAudio.rate(page, 1);
      await seconds(3);
    },
    says: 'WALK',
    lands: [2, 5],
  },
  {
    state: 'running',
    event: 'the element reports an error',
    happens: ({ page }) => onAudio.breakSource(page),
    says: running.stalledTitle,
    answer: goOn,
    lands: [-3.2, 1],
  },
  {
    state: 'running',
    event: 'the page is frozen for eight seconds',
    happens: (j) => freeze(j, 8),
    says: running.interruptedTitle,
    answer: goOn,
    lands: [-3.2, 2],
  },
  {
    state: 'running',
    event: 'the system takes the sound for six seconds and gives it back: go on',
    happens: async ({ page }) => {
      await onAudio.pause(page);
      await seconds(6);
      await onAudio.play(page);
    },
    says: running.gapTitle,
    answer: (page) => button(page, running.gapGoOn(1)).click(),
    lands: [-3.2, 2],
  },
  {
    state: 'running',
    event: 'the system takes the sound for six seconds and gives it back: catch up',
    happens: async ({ page }) => {
      await onAudio.pause(page);
      await seconds(6);
      await onAudio.play(page);
    },
    says: running.gapTitle,
    answer: (page) => button(page, running.gapCatchUp).click(),
    lands: [5, 9],
  },
  {
    state: 'running',
    event: 'another page is in front for five seconds and the sound goes on',
    happens: async ({ page, newTab }) => {
      const other = await newTab();
      await other.bringToFront();
      await seconds(5);
      await page.bringToFront();
    },
    says: 'WALK',
    lands: [4, 8],
  },
  {
    state: 'holding',
    event: 'the system pauses the element',
    happens: async ({ page }) => {
      await onAudio.pause(page);
      await seconds(2);
    },
    says: running.holdingTitle,
    answer: goOn,
    lands: [-3.2, 1],
  },
  {
    state: 'holding',
    event: 'the element reports an error',
    happens: async ({ page }) => {
      await onAudio.breakSource(page);
      await seconds(1);
    },
    says: running.holdingTitle,
    answer: goOn,
    lands: [-3.2, 1],
  },
  {
    state: 'holding',
    event: 'the page is frozen for eight seconds',
    happens: (j) => freeze(j, 8),
    says: running.holdingTitle,
    answer: goOn,
    lands: [-3.2, 2],
  },
];

for (const { state, event, happens, says, answer, lands } of ROWS) {
  journey(
    `REAL-5 ${state}: ${event}`,
    async (j) => {
      const { page } = j;
      await startOn(page, j.site, SEVERAL);
      await moveTo(page, PLACE);
      await seconds(1.2);
      const { at } = await heard(page);
      if (state === 'holding') {
        await button(page, running.hold).click();
        await button(page, running.goOn).waitFor();
      }
      await happens(j);
      await title(page, says).waitFor();
      if (says === running.interruptedTitle) {
        // Whoever took the sound has it: nothing starts by itself.
        const taken = await heard(page);
        await seconds(2);
        expect(await heard(page)).toMatchObject({ at: taken.at, paused: true });
      }
      await answer?.(page);
      await button(page, running.hold).waitFor();
      await seconds(0.3);
      const first = await heard(page);
      expect(first.at - at).toBeGreaterThan(lands[0]);
      expect(first.at - at).toBeLessThan(lands[1] + 1);
      expect(first.at).toBeLessThan(HOLDING_FROM);
      await seconds(2);
      const then = await heard(page);
      expect(then.paused).toBe(false);
      expect(then.at - first.at).toBeGreaterThan(1.5);
    },
    { expected: /ERR_FILE_NOT_FOUND|nothing-is-here/ },
  );
}
