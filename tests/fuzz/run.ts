/**
 * `npm run fuzz`: damaged and hostile bytes and text through every decoder of the app.
 *
 *   npm run fuzz                             a million cases
 *   npm run fuzz -- --runs 5000 --seed 7     as many as asked, the same again
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { type Decoder, makeDecoders, type Written } from './decoders.ts';
import { randomFrom } from './random.ts';

const given = (name: string): number | undefined => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : Number(process.argv[at + 1]);
};

const runs = given('runs') ?? 1_000_000;
const seed = given('seed') ?? Math.floor(Math.random() * 2 ** 32);
/** What may be held after a collection, beyond the beginning: a bomb that a decoder kept would be seen. */
const HELD_MAX = 64 * 1024 * 1024;
/** Cases from one look at the memory to the next: a collection takes its time. */
const LOOK = 1000;
/** Cases after which a long row says how far it is. */
const SHOWN = 25_000;
const FOLDER = '.cache/fuzz';

const decoders = await makeDecoders();
const found: string[] = [];
const before = held();
let most = before;

/** Bytes that are held once all that can go has gone. `npm run fuzz` lets a script ask for that. */
function held(): number {
  globalThis.gc?.();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

/** Signatures are new in every run: the case itself is written down, not only its number. */
function keep(name: string, n: number, { kind, content }: Written, problem: string): void {
  mkdirSync(FOLDER, { recursive: true });
  const file = `${FOLDER}/${name.replace(/\W+/g, '-')}-${seed + n}.txt`;
  writeFileSync(file, content);
  found.push(`${file} (${kind}): ${problem}`);
}

/** @returns milliseconds of the slowest case */
async function runAll(decoder: Decoder, count: number): Promise<number> {
  let slowest = 0;
  for (let n = 0; n < count; n++) {
    const item = await decoder.make(randomFrom(seed + n));
    const begun = performance.now();
    try {
      const problem = await decoder.look(item);
      if (problem !== undefined) keep(decoder.name, n, item, problem);
    } catch (error) {
      keep(decoder.name, n, item, `threw ${String(error)}`);
    }
    slowest = Math.max(slowest, performance.now() - begun);
    if (n % LOOK === LOOK - 1) most = Math.max(most, held());
    if (n > 0 && n % SHOWN === 0) console.log(`${`${n}`.padStart(8)}  ${decoder.name} ...`);
  }
  const wrong = decoder.end?.();
  if (wrong !== undefined) found.push(wrong);
  return slowest;
}

console.log(`seed ${seed}, ${runs} cases, ${decoders.length} decoders`);
const all = decoders.reduce((sum, { share }) => sum + share, 0);
const begun = performance.now();
let cases = 0;
for (const decoder of decoders) {
  const count = Math.max(1, Math.round((runs * decoder.share) / all));
  const start = performance.now();
  const slowest = await runAll(decoder, count);
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  cases += count;
  const row = [`${count}`.padStart(8), decoder.name.padEnd(30), `${seconds} s`.padStart(9)];
  console.log(`${row.join('  ')}, slowest ${slowest.toFixed(0)} ms, ${found.length} found so far`);
}

const grown = most - before;
const peak = Math.round(process.resourceUsage().maxRSS / 1024);
console.log(
  `held at most ${Math.round(grown / 1024 / 1024)} MiB more; the process took ${peak} MiB`,
);
if (globalThis.gc === undefined) found.push('run it with --expose-gc, or memory is not looked at');
if (grown > HELD_MAX) found.push('memory was not bounded');
for (const each of found.slice(0, 50)) console.error(each);
const minutes = ((performance.now() - begun) / 60_000).toFixed(1);
console.log(`${cases} cases in ${minutes} min, ${found.length} found, seed ${seed}`);
process.exit(found.length > 0 ? 1 : 0);
