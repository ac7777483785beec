import type { Page } from 'playwright-core';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { buildIntake, type Files, visitIntake } from '../drivers/browser/intake-page.ts';
import { openSite, type Site } from '../drivers/browser/site.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { answerLink, chatLine, sealedCode, weekly } from '../drivers/exchange/sealed.ts';
import type { Table } from './table.ts';

/** Answers in one chat: a thousand people who each told six times are 6,000. */
const SIZES = [60, 600, 6000] as const;
const SLOWDOWN = 4;
const WEEKS = 6;
/** Sealed at a time, so that the maker's memory is not the measure. */
const AT_ONCE = 100;
/** Of talk between two answers. */
const TALK = 3;

async function chatOf(seal: string, answers: number): Promise<string> {
  const lines: string[] = [];
  for (let from = 0; from < answers; from += AT_ONCE) {
    const some = Array.from({ length: Math.min(AT_ONCE, answers - from) }, (_, n) =>
      // Of a thousand people, then a week later: as a group's chat has them.
      weekly((from + n) % 1000, 1 + (Math.floor((from + n) / 1000) % WEEKS)),
    );
    const codes = await Promise.all(some.map((each) => sealedCode(seal, each)));
    for (const [n, code] of codes.entries()) {
      lines.push(chatLine(from + n, answerLink(code)));
      for (let talk = 0; talk < TALK; talk++)
        lines.push(chatLine(from + n, 'Wind from the sea all the way out, see you at the hide.'));
    }
  }
  return lines.join('');
}

interface Measured {
  readonly ms: number;
  readonly longest: number;
  readonly views: number;
  readonly people: number;
  readonly bytes: number;
  readonly heap: number;
}

/** One chat into an empty database, with the page's own heap looked at meanwhile. */
async function once(page: Page, site: Site, files: Files, answers: number): Promise<Measured> {
  await visitIntake(page, site, files);
  const programme = JSON.stringify(marshProgramme(WEEKS));
  const seal = await page.evaluate((text) => window.intake.leaderKey(text), programme);
  site.replace('/chat.txt', await chatOf(seal, answers));
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const used = async (): Promise<number> => (await session.send('Runtime.getHeapUsage')).usedSize;
  const before = await used();
  let most = before;
  let isOver = false;
  const watching = (async () => {
    while (!isOver) {
      most = Math.max(most, await used());
      await page.waitForTimeout(200);
    }
  })();
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  const { last, ms, longest, views, people, bytes } = await page.evaluate(() =>
    window.intake.bringIn('./chat.txt'),
  );
  isOver = true;
  await watching;
  const taken = last.name === 'done' ? Object.values(last.report.taken) : [];
  if (taken[0]?.answers !== answers) throw new Error(`not all were taken: ${JSON.stringify(last)}`);
  return { ms, longest, views, people, bytes, heap: most - before };
}

const mega = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

/** What it takes to bring a group's chat in, and whether the page can be used meanwhile. */
export async function bringingIn(): Promise<Table> {
  const site = await openSite();
  const files = await buildIntake();
  const rows: string[][] = [];
  try {
    for (const answers of SIZES) {
      const profile = newProfile();
      const browser = await openBrowser(profile);
      try {
        const each = await once(await browser.tab(), site, files, answers);
        rows.push([
          answers.toLocaleString('en'),
          String(each.people),
          mega(each.bytes),
          `${(each.ms / 1000).toFixed(1)} s`,
          `${(each.ms / answers).toFixed(2)} ms`,
          each.longest === 0 ? 'under 50 ms' : `${each.longest.toFixed(0)} ms`,
          String(each.views),
          mega(each.heap),
        ]);
      } finally {
        await browser.close();
        profile.remove();
      }
    }
  } finally {
    await site.close();
  }
  return {
    title: 'Bringing answers in',
    how: `One chat as it is exported, ${TALK} lines of talk between answers, into an empty database in Chromium; the page slowed down ${SLOWDOWN} times, its worker not. Heap: the page’s at its most, above what it was before.`,
    head: [
      'Answers',
      'People',
      'Chat',
      'Time',
      'Each',
      'Longest task of the page',
      'Shown',
      'Heap',
    ],
    rows,
  };
}
