/** What a screen reader is given of a page: roles, names and their order, held against a golden file. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { ROOT } from '../tree.ts';

const FOLDER = join(ROOT, 'tests/fixtures/trees');

const WEEKDAY = /\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)(?:s|nes|rs|ur)?(?:day)?\b/g;
const DATE =
  /\b\d{1,2}(?:st|nd|rd|th)? (?:January|February|March|April|May|June|July|August|September|October|November|December|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sept|Sep|Oct|Nov|Dec)\b(?: \d{4})?/g;

/** A name that a row or a cell has from its content alone, which stands below it line by line. */
const FROM_CONTENT = /^(\s*- )'?(row|rowheader|cell|columnheader) .*:$/gm;

/** It counts minutes and effort of sessions that the tour ended at once: more on a slow machine. */
const COUNTS = 'look back';

/**
 * What is another at every visit: dates, times of day, and how far a session has come. Their place
 * and the words around them stay. Lengths in minutes stay where nothing runs.
 */
function steady(tree: string, running: boolean): string {
  const always = tree
    .replace(FROM_CONTENT, '$1$2:')
    .replace(/\b\d{4}-\d{2}-\d{2}\b/g, '(day)')
    .replace(WEEKDAY, '(weekday)')
    .replace(DATE, '(date)')
    .replace(/\/(done|felt|lead|p)\/[0-9a-z]*\d[0-9a-z-]{7,}/g, '/$1/(id)')
    .replace(/\b\d{1,2}:\d{2}\b/g, '(time)')
    .replace(/(?:\b\d+ min )?\b\d+ s\b|\b0 min\b/g, '# s');
  // The level of a heading is no number that runs.
  return running
    ? always
        .replace(/(?:\b\d+ minutes?)?(?: ?\b\d+ seconds?)? (?=left"|until the start")/g, '# ')
        .replace(/(?<!level=)\b\d+/g, '#')
    : always;
}

/** Of more minutes the name of a plot says another plural, and other ticks stand beside it. */
const counted = (tree: string): string =>
  tree.replace(/# minutes(?=\.")/g, '# minute').replace(/(?<="': )#(?:\.#)?(?: #(?:\.#)?)*/g, '#');

const fileOf = (stop: string): string =>
  join(FOLDER, `${stop.replace(/\W+/g, '-').replace(/^-|-$/g, '')}.yml`);

/** The golden trees of stops that were not among these. */
export function treesOfNoStop(stops: readonly string[]): readonly string[] {
  const wanted = new Set(stops.map(fileOf));
  return readdirSync(FOLDER).filter((name) => !wanted.has(join(FOLDER, name)));
}

/** The first line that is another, as it was and as it is; nothing where the two are one. */
function difference(wanted: string, got: string): readonly string[] {
  if (wanted === got) return [];
  const [before, now] = [wanted.split('\n'), got.split('\n')];
  const longer = before.length > now.length ? before : now;
  const at = longer.findIndex((_, n) => before[n] !== now[n]);
  const said = (line: string | undefined) => line?.trim() ?? '(the end)';
  return [`line ${at + 1} was: ${said(before[at])}\n  and is: ${said(now[at])}`];
}

/** The whole page but for the caption: its words are there only as long as the voice says them. */
async function treeOf(page: Page): Promise<string> {
  const hide = (yes: boolean) =>
    page.evaluate((on) => {
      for (const each of document.querySelectorAll('.caption'))
        on ? each.setAttribute('aria-hidden', 'true') : each.removeAttribute('aria-hidden');
    }, yes);
  await hide(true);
  const tree = await page.locator('body').ariaSnapshot();
  await hide(false);
  return tree;
}

/**
 * The page against `tests/fixtures/trees/<stop>.yml`, as lines; nothing when they are one.
 * With UPDATE_TREES=1 the file is written instead, to be read before it is committed.
 */
export async function treeAgainstGolden(
  page: Page,
  stop: string,
  running: boolean,
): Promise<readonly string[]> {
  const counts = stop === COUNTS;
  const read = steady(await treeOf(page), running || counts);
  const got = `${counts ? counted(read) : read}\n`;
  const path = fileOf(stop);
  if (process.env.UPDATE_TREES === '1') {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(path, got);
    return [];
  }
  if (!existsSync(path)) return [`no golden tree ${path.slice(ROOT.length)}: UPDATE_TREES=1`];
  return difference(readFileSync(path, 'utf8'), got);
}
