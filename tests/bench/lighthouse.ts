/**
 * `npm run lighthouse`: the built app as Lighthouse sees it, on its slow phone and on its desktop,
 * each three times in turn, the median of each figure. Nothing else may run beside it: it slows the
 * processor down by the factor four, and a busy one is slower still.
 */
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { openSite } from '../drivers/browser/site.ts';
import { asText, median, type Table } from './table.ts';

/** The newest that runs on Node 20. Not a dependency: it brings 130 packages, and is run by hand. */
const LIGHTHOUSE = 'lighthouse@12.2.3';
const RUNS = 3;
const CATEGORIES = {
  performance: 'performance',
  accessibility: 'accessibility',
  'best-practices': 'best practices',
  seo: 'findability',
} as const;
const TIMES = {
  'first-contentful-paint': 'first words (ms)',
  'largest-contentful-paint': 'largest words (ms)',
  'total-blocking-time': 'blocked (ms)',
  'cumulative-layout-shift': 'layout shift',
} as const;

interface Report {
  readonly categories: Readonly<Record<string, { readonly score: number }>>;
  readonly audits: Readonly<Record<string, { readonly numericValue: number }>>;
  /** How fast the machine was by a small calculation of Lighthouse's own; more is faster. */
  readonly environment: { readonly benchmarkIndex: number };
}

/** What it says itself when a visit could not be recorded, now and then. */
const AGAIN = 'run Lighthouse again';

/** One visit; another in its place when it asks for one, and no third. */
const report: typeof visited = (...asked) =>
  visited(...asked).catch((error: unknown) => {
    if (!String(error).includes(AGAIN)) throw error;
    console.error('A visit could not be recorded, and is made once more.');
    return visited(...asked);
  });

/** One visit, judged in a process of its own while this one serves the pages. */
async function visited(url: string, preset: readonly string[], folder: string): Promise<Report> {
  const file = join(folder, 'report.json');
  await promisify(execFile)(
    'npx',
    [
      '--yes',
      LIGHTHOUSE,
      url,
      '--quiet',
      '--chrome-flags=--headless=new --no-sandbox',
      '--output=json',
      `--output-path=${file}`,
      ...preset,
    ],
    { env: { CHROME_PATH: '/usr/bin/chromium', ...process.env } },
  );
  return JSON.parse(readFileSync(file, 'utf8')) as Report;
}

function figuresOf({ categories, audits, environment }: Report): Readonly<Record<string, number>> {
  const scores = Object.entries(CATEGORIES).map(([id, name]) => [
    name,
    Math.round((categories[id]?.score ?? Number.NaN) * 100),
  ]);
  const times = Object.entries(TIMES).map(([id, name]) => {
    const value = audits[id]?.numericValue ?? Number.NaN;
    return [name, value < 10 ? Number(value.toFixed(3)) : Math.round(value)];
  });
  const machine = ['the machine (more is faster)', environment.benchmarkIndex];
  return Object.fromEntries([...scores, ...times, machine]) as Record<string, number>;
}

async function measured(): Promise<Table> {
  const site = await openSite();
  const folder = mkdtempSync(join(tmpdir(), 'towpath-lighthouse-'));
  try {
    const devices = { 'slow phone': [], desktop: ['--preset=desktop'] } as const;
    const columns: Readonly<Record<string, number>>[][] = [];
    for (const preset of Object.values(devices)) {
      const runs: Readonly<Record<string, number>>[] = [];
      for (let run = 0; run < RUNS; run += 1)
        runs.push(figuresOf(await report(site.url, preset, folder)));
      columns.push(runs);
    }
    const names = Object.keys(columns[0]?.[0] ?? {});
    return {
      title: 'Lighthouse',
      how: `${LIGHTHOUSE}, the first visit to the built app, median of ${RUNS}.`,
      head: ['', ...Object.keys(devices)],
      rows: names.map((name) => [
        name,
        ...columns.map((runs) => String(median(runs.map((run) => run[name] ?? Number.NaN)))),
      ]),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
    await site.close();
  }
}

console.log(asText(await measured()));
