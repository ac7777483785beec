/** One long session with the page hidden, in real time: its sound against the clock, its changes, its heap. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { groups } from '../../src/copy/groups.ts';
import { choiceSaid } from '../../src/copy/join.ts';
import { lockScreen } from '../../src/copy/lock-screen.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import type { Timeline } from '../../src/domain/timeline/timeline.ts';
import type { RealBrowser } from '../drivers/browser/browser.ts';
import type { Site } from '../drivers/browser/site.ts';
import { button, heard, openFile, openSession, start, visit } from '../drivers/browser/visit.ts';

const MARSH_MILE = new URL('../fixtures/programmes/marsh-mile.json', import.meta.url);

/** What the lock screen was told, with the sound's place and the clock in that moment, in seconds. */
interface Told {
  readonly title: string;
  readonly at: number;
  readonly clock: number;
}

type Watched = Window & { told: Told[] };

/** What came of it. Times in seconds, the heap in bytes. */
export interface Soaked {
  readonly total: number;
  readonly planned: number;
  /** Changes that the lock screen was told, and by how much the latest came after its place. */
  readonly reached: number;
  readonly latest: number;
  /** Place less clock since the first reading: each reading's, in its order. */
  readonly drift: readonly number[];
  /** Readings in which the page was seen or the sound stood. */
  readonly seenOrStood: number;
  /** After a collection: at the beginning, and at the end. */
  readonly heap: readonly [number, number];
  readonly nodes: readonly [number, number];
}

/** A session of so many whole minutes: a twelfth of it before and after, and turns between. */
export function planOf(minutes: number): string {
  const turns = minutes < 30 ? 5 : 25;
  const [edge, each] = [minutes * 5, (minutes * 25) / turns];
  return `${edge} s easy walk; ${turns} x (${each} s run, ${each} s walk); ${edge} s easy walk`;
}

const timelineOf = (minutes: number): Timeline => {
  const plan = parsePlan(planOf(minutes));
  if (!plan.ok) throw new Error(`no session of ${minutes} min`);
  return layOut(plan.value);
};

/**
 * Runs it from a fresh profile to its end.
 *
 * @param tell is given a line now and then
 * @param own the page to run it in, at no address yet; left out: a new one
 */
export async function soak(
  browser: RealBrowser,
  site: Site,
  minutes: number,
  tell: (line: string) => void = () => {},
  own?: Page,
): Promise<Soaked> {
  const timeline = timelineOf(minutes);
  const total = timeline.total / 1000;
  const page = own ?? (await browser.tab());
  await watchTold(page);
  await follow(page, site, minutes);
  await start(page);
  const other = await browser.tab();
  await other.bringToFront();
  const reading = await memoryOf(page, browser);
  const memory = [await reading()];

  const first = await heard(page);
  const drift: number[] = [];
  let seenOrStood = 0;
  const every = Math.max(2, minutes / 6);
  for (let turn = 1; ; turn += 1) {
    await page.waitForTimeout(every * 1000);
    const now = await heard(page);
    if (now.at > total - 1) break;
    drift.push(now.at - first.at - (now.clock - first.clock));
    if (!now.hidden || now.paused) seenOrStood += 1;
    if (turn % 30 === 0)
      tell(`at ${now.at.toFixed(0)} s: ${inMs(drift.at(-1) ?? 0)} from the clock`);
  }
  await page.waitForTimeout(15_000);
  memory.push(await reading());
  const told = await page.evaluate(() => (window as unknown as Watched).told);
  await page.bringToFront();
  await page.waitForURL(/#\/felt\//);
  const ends = (k: number): readonly [number, number] => [
    memory[0]?.[k] ?? Number.NaN,
    memory[1]?.[k] ?? Number.NaN,
  ];
  return {
    total,
    ...reachedOf(timeline, told),
    drift,
    seenOrStood,
    heap: ends(0),
    nodes: ends(1),
  };
}

/** As lines for a person. */
export function asLines(each: Soaked): readonly string[] {
  const [least, most] = [Math.min(...each.drift), Math.max(...each.drift)];
  const [from, to] = each.heap.map((bytes) => (bytes / 1e6).toFixed(1));
  return [
    `soak: ${(each.total / 60).toFixed(0)} min with the page hidden, ${each.drift.length} readings, ${each.seenOrStood} with the page seen or the sound standing`,
    `soak: place less clock ${inMs(least)} to ${inMs(most)}, at the end ${inMs(each.drift.at(-1) ?? Number.NaN)}`,
    `soak: ${each.reached} of ${each.planned} changes reached, told at most ${inMs(each.latest)} after their place`,
    `soak: heap ${from} MB at the beginning, ${to} MB at the end; nodes ${each.nodes.join(' and ')}`,
  ];
}

const inMs = (seconds: number): string => `${(seconds * 1000).toFixed(0)} ms`;

/** From the next page on, keeps each title given to the lock screen, and where the sound was. */
const watchTold = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const all: Told[] = [];
    (window as unknown as Watched).told = all;
    // On the prototype: the browser may throw its one object away, and what was put on it with it.
    const own = Object.getOwnPropertyDescriptor(MediaSession.prototype, 'metadata');
    Object.defineProperty(MediaSession.prototype, 'metadata', {
      configurable: true,
      get() {
        return own?.get?.call(this);
      },
      set(given: MediaMetadata | null) {
        own?.set?.call(this, given);
        const at = document.querySelector('audio')?.currentTime ?? Number.NaN;
        all.push({ title: given?.title ?? '', at, clock: performance.now() / 1000 });
      },
    });
  });

async function follow(page: Page, site: Site, minutes: number): Promise<void> {
  await visit(page, site);
  const programme = JSON.parse(readFileSync(MARSH_MILE, 'utf8'));
  programme.weeks[0].sessions.wren = planOf(minutes);
  await openFile(page, 'long.json', JSON.stringify(programme));
  await button(page, choiceSaid('keep', 'new', 1).name).click();
  await button(page, groups.choose('Wren')).click();
  await page.getByRole('heading', { level: 1, name: programme.title }).waitFor();
  await openSession(page, { week: 1, session: 1 });
}

/** A way to read the page's heap after a collection, and its nodes. */
async function memoryOf(page: Page, { context }: RealBrowser) {
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable');
  return async (): Promise<readonly [number, number]> => {
    await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    const of = (name: string): number =>
      metrics.find((each) => each.name === name)?.value ?? Number.NaN;
    return [of('JSHeapUsedSize'), of('Nodes')];
  };
}

/** Which of the session's changes were told, each in its order and not before its place. */
function reachedOf({ segments }: Timeline, told: readonly Told[]) {
  const titles = told.filter(({ title }, n) => title !== told[n - 1]?.title);
  const wanted = [
    ...segments.map((each) => ({ title: lockScreen.segment(each), at: each.start / 1000 })),
    { title: lockScreen.finished, at: (segments.at(-1)?.end ?? 0) / 1000 },
  ].slice(1);
  let from = 0;
  let [reached, latest] = [0, 0];
  for (const change of wanted) {
    const found = titles.findIndex(({ title }, n) => n >= from && title === change.title);
    if (found < 0) continue;
    from = found + 1;
    reached += 1;
    latest = Math.max(latest, (titles[found]?.at ?? Number.NaN) - change.at);
  }
  return { planned: wanted.length, reached, latest };
}
