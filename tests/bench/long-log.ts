import type { Page } from 'playwright-core';
import { back } from '../../src/copy/back.ts';
import { log } from '../../src/copy/log.ts';
import { nowCopy } from '../../src/copy/now.ts';
import { backupWords } from '../../src/copy/record-files.ts';
import { records } from '../../src/copy/records.ts';
import { writeBackup } from '../../src/domain/exchange/backup.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { isoDate } from '../../src/domain/programme/calendar.ts';
import { did, HERON } from '../domain/advice/people.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { openSite } from '../drivers/browser/site.ts';
import { go, visit } from '../drivers/browser/visit.ts';
import { median, type Table } from './table.ts';

const RUNS = 5;
const SLOWDOWN = 4;
const SESSIONS = 3000;
const DAY_MS = 86_400_000;

/** Three sessions a week up to yesterday, for about nineteen years, each rated and with a note. */
function sessions(): readonly LogEntry[] {
  const yesterday = Math.floor(Date.now() / DAY_MS) - 1;
  return Array.from({ length: SESSIONS }, (_, n) =>
    did({
      date: isoDate(yesterday - Math.floor(((SESSIONS - 1 - n) * 7) / 3)),
      week: 1 + (n % HERON.weeks.length),
      session: 1 + (n % 2),
      feeling: { effort: 3 + (n % 5), note: 'Wind from the sea all the way out.' },
    }),
  );
}

/** Writes a group and sessions into the app's own database. */
function seed(page: Page, entries: readonly LogEntry[]): Promise<void> {
  return page.evaluate(
    ([id, list]) =>
      new Promise<void>((resolve, reject) => {
        const open = indexedDB.open('towpath');
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const tx = open.result.transaction(['log', 'choices'], 'readwrite');
          tx.objectStore('choices').put('curlew', id);
          for (const each of list) tx.objectStore('log').put(each);
          tx.onerror = () => reject(tx.error);
          tx.oncomplete = () => {
            open.result.close();
            resolve();
          };
        };
      }),
    [HERON.id, entries] as const,
  );
}

export interface Act {
  /** An address to go to, a button to press, or a file to be taken in. */
  readonly to?: string;
  readonly press?: string;
  readonly file?: string;
  /** Typed into the field that a selector names. */
  readonly type?: readonly [selector: string, text: string];
  /** What stands on the page when it is done. */
  readonly until: string;
}

/** From the tap to the first frame that shows what it leads to, in ms. */
export function took(page: Page, act: Act): Promise<number> {
  return page.evaluate(async ({ to, press, file, type, until }: Act) => {
    const begun = performance.now();
    if (to !== undefined) location.hash = to;
    if (press !== undefined)
      [...document.querySelectorAll('button')].find((b) => b.textContent === press)?.click();
    if (file !== undefined) {
      const input = document.querySelector<HTMLInputElement>('input[type=file]');
      const given = new DataTransfer();
      given.items.add(new File([file], 'towpath-backup.json', { type: 'application/json' }));
      if (input === null) throw new Error('no place for a file');
      input.files = given.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
    }
    if (type !== undefined) {
      const field = document.querySelector<HTMLInputElement>(type[0]);
      const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
      set?.call(field, type[1]);
      field?.dispatchEvent(new Event('input', { bubbles: true }));
    }
    await new Promise<void>((resolve, reject) => {
      const late = setTimeout(() => reject(new Error(`never came: ${until}`)), 60_000);
      // No function in here has a name: what runs this file would call a helper for it.
      const seen = new MutationObserver(() => {
        if (document.querySelector('main')?.textContent?.includes(until) !== true) return;
        seen.disconnect();
        clearTimeout(late);
        requestAnimationFrame(() => setTimeout(resolve));
      });
      seen.observe(document, { childList: true, subtree: true, characterData: true });
    });
    return performance.now() - begun;
  }, act);
}

/** Runs in the page before its own scripts: when what to do now stands there. */
function noteWhenUsable(title: string): void {
  const seen = new MutationObserver(() => {
    const stands = [...document.querySelectorAll('main h2')].some((h) => h.textContent === title);
    if (!stands) return;
    seen.disconnect();
    requestAnimationFrame(() =>
      setTimeout(() => {
        (window as unknown as { usableAt: number }).usableAt = performance.now();
      }),
    );
  });
  seen.observe(document, { childList: true, subtree: true });
}

const usable = async (page: Page): Promise<number> => {
  await page.reload();
  await page.waitForFunction(() => 'usableAt' in window);
  return page.evaluate(() => (window as unknown as { usableAt: number }).usableAt);
};

type Times = Readonly<Record<string, number>>;

/** Once through everything that reads the whole log, from a fresh load of the page. */
async function once(page: Page, backup: string): Promise<Times> {
  await go(page, '/');
  const first = await usable(page);
  // What is fetched after the first page is there by then, as on a phone in somebody's hand.
  await page.waitForTimeout(2500);
  const lookBack = await took(page, { to: '/back', until: back.guidance.title });
  const done = await took(page, { to: '/done', until: log.title });
  await took(page, { to: '/records', until: records.saveBackup });
  const saved = await took(page, { press: records.saveBackup, until: records.given });
  const looked = await took(page, { file: backup, until: records.previewTitle });
  return { first, lookBack, done, saved, looked };
}

const ROWS = [
  ['First screen, with what to do now', 'first'],
  ['Look back', 'lookBack'],
  ['What was done', 'done'],
  ['A backup saved', 'saved'],
  ['A backup of 3,000 looked at', 'looked'],
  ['The same taken in', 'taken'],
] as const;

/** All runs over one log, in a browser of its own. */
async function over(entries: readonly LogEntry[], backup: string): Promise<readonly Times[]> {
  const site = await openSite();
  const profile = newProfile();
  const browser = await openBrowser(profile);
  try {
    const page = await browser.tab();
    page.setDefaultTimeout(60_000);
    await visit(page, site);
    await seed(page, entries);
    await page.addInitScript(noteWhenUsable, nowCopy.title);
    const session = await browser.context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
    const runs: Times[] = [];
    for (let run = 0; run < RUNS; run += 1) runs.push(await once(page, backup));
    // Last, because it changes what is kept.
    const taken = await took(page, { press: records.take, until: records.done });
    return [...runs, { taken }];
  } finally {
    await browser.close();
    profile.remove();
    await site.close();
  }
}

/** What 3,000 sessions cost in a real browser on a slow processor, beside a log of one. */
export async function longLog(): Promise<Table> {
  const entries = sessions();
  const file = entries.map(
    (each, n) => [each.id, n % 5 === 0 ? { ...each, feltAt: 1 } : each] as const,
  );
  const backup = writeBackup({ log: file }, backupWords, Date.now());
  const [short, full] = [await over(entries.slice(-1), backup), await over(entries, backup)];
  const say = (runs: readonly Times[], key: string): string =>
    `${median(runs.flatMap((run) => run[key] ?? [])).toFixed(0)} ms`;
  return {
    title: 'A log of 3,000 sessions',
    how: `The built app in Chromium at ${SLOWDOWN} x slowdown, over IndexedDB; from the tap to the frame that shows it, and for the first screen from the start of the page. Median of ${RUNS}, taken in once. Budget: 200 ms for what opens the log.`,
    head: ['What', 'One session', '3,000 sessions'],
    rows: ROWS.map(([what, key]) => [what, say(short, key), say(full, key)]),
  };
}
