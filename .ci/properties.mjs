/**
 * `npm run properties`: looks at every property of the rules for a time, where `npm test` looks at
 * most of them a hundred times: what holds nearly always is found out only so.
 *
 *   npm run properties         ten seconds each, about eight minutes
 *   npm run properties -- 60   a minute each
 *
 * A test that says how often its property is looked at keeps to that. What fails is printed with
 * its seed and its path, as fast-check wants them.
 */
import { readdirSync, readFileSync } from 'node:fs';
import process from 'node:process';
import { setUp } from './setup.mjs';

/** What needs a browser, a decoder or a screen is left out. */
const FOLDERS = ['app', 'copy', 'domain', 'platform'];
/** It compares how long things take, on a machine that does nothing else. */
const LEFT_OUT = ['tests/domain/exchange/long-texts.test.ts'];

setUp();
const { startVitest } = await import('vitest/node');
const seconds = Number(process.argv[2] ?? 10);
if (!(seconds > 0)) throw new Error('the seconds for each property are a number');
process.env.PROPERTY_MS = String(seconds * 1000);
process.env.PROPERTY_RUNS = String(1e9);

const files = FOLDERS.flatMap((folder) =>
  readdirSync(`tests/${folder}`, { recursive: true }).map((name) => `tests/${folder}/${name}`),
)
  .filter((file) => file.endsWith('.test.ts') && !LEFT_OUT.includes(file))
  .filter((file) => readFileSync(file, 'utf8').includes("from 'fast-check'"));
console.log(`${files.length} files of tests with properties, ${seconds} s each property.`);
await startVitest('test', [], {
  config: false,
  run: true,
  include: files,
  setupFiles: ['.ci/property-time.ts'],
  // One test may hold several properties, and what failed is made smaller.
  testTimeout: 20_000 * seconds + 60_000,
  maxWorkers: 2,
});
