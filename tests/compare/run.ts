/**
 * `npm run compare`: of every change of a folder's rules that no test noticed, as the last
 * `npm run mutation` wrote them down, whether anything at all comes out otherwise.
 *
 *   npm run compare -- cues         ten seconds of inputs made by chance for each
 *   npm run compare -- session 60   a minute for each
 *
 * What differs lacks a test, and is printed with the smallest input that was found. What does not
 * differ in thousands of inputs is the same rule in other words, or as good as that.
 */
import { createHash } from 'node:crypto';
import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import fc from 'fast-check';
import { cues } from './cues.ts';
import { exchange } from './exchange.ts';
import type { AnyOutcomes } from './outcomes.ts';
import { session } from './session.ts';

const FOLDERS: Readonly<Record<string, AnyOutcomes>> = { cues, session, exchange };

interface Change {
  /** File, range as line:column-line:column from 1, and what stands there in its place. */
  readonly place: readonly [file: string, range: string, replacement: string];
  readonly status: string;
  /** What tells one state of the file from another, as `.ci/mutation.mjs` wrote it. */
  readonly source: string;
}

const [folder = '', seconds = '10'] = process.argv.slice(2);
const outcomes = FOLDERS[folder];
const record = `.cache/reports/mutation/${folder}.json`;
if (outcomes === undefined) throw new Error(`one of: ${Object.keys(FOLDERS).join(', ')}`);
if (!existsSync(record)) throw new Error(`npm run mutation -- ${folder} comes first`);

const COPIES = '.cache/compare';
rmSync(COPIES, { recursive: true, force: true });
const changes: Change[] = JSON.parse(readFileSync(record, 'utf8'));
const unnoticed = changes.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
// In a file that was written anew since, nothing is where it was.
const left = unnoticed.filter(({ place: [file], source }) => source === sourceOf(file));
const { parts, inputs } = outcomes;
const unchanged = await rulesIn(copyOf('unchanged'));

let differing = 0;
for (const [n, { place }] of left.entries()) {
  const root = copyOf(`${n}`);
  const was = change(root, place);
  const rules = await rulesIn(root).catch(() => undefined);
  const [file, range, replacement] = place;
  if (rules === undefined) {
    console.log(`cannot be loaded: ${file}:${range}`);
    continue;
  }
  const { failed, numRuns, counterexample } = fc.check(
    fc.property(inputs, (input) => told(rules, input) === told(unchanged, input)),
    {
      numRuns: 1e9,
      interruptAfterTimeLimit: Number(seconds) * 1000,
      markInterruptAsFailure: false,
    },
  );
  if (failed) differing++;
  console.log(`${failed ? 'differs in' : 'the same in'} ${numRuns}: ${file}:${range}`);
  console.log(`  ${inOneLine(was)}\n  ${inOneLine(replacement)}`);
  if (counterexample !== null) console.log(`  with ${fc.stringify(counterexample[0])}`);
}
rmSync(COPIES, { recursive: true, force: true });
console.log(`${folder}: of ${left.length} changes ${differing} differ`);
const moved = unnoticed.length - left.length;
if (moved > 0) console.log(`${moved} more are in files that were written anew since`);

/** A copy of all rules, which can be changed and loaded beside them. */
function copyOf(name: string): string {
  cpSync('src/domain', `${COPIES}/${name}`, { recursive: true });
  return `${process.cwd()}/${COPIES}/${name}`;
}

async function rulesIn(root: string): Promise<unknown> {
  const all = await Promise.all(parts.map((part) => import(`${root}/${part}.ts`)));
  return Object.assign({}, ...all);
}

function sourceOf(file: string): string {
  if (!existsSync(file)) return '';
  return createHash('sha256').update(readFileSync(file)).digest('hex').slice(0, 12);
}

/** @returns what stood there */
function change(root: string, [file, range, replacement]: Change['place']): string {
  const copy = file.replace('src/domain', root);
  const text = readFileSync(copy, 'utf8');
  const lines = text.split('\n');
  const [from = 0, to = 0] = range.split('-').map((each) => {
    const [line = 1, column = 1] = each.split(':').map(Number);
    return lines.slice(0, line - 1).reduce((sum, { length }) => sum + length + 1, column - 1);
  });
  writeFileSync(copy, `${text.slice(0, from)}${replacement}${text.slice(to)}`);
  return text.slice(from, to);
}

function told(rules: unknown, input: unknown): string {
  try {
    return JSON.stringify(outcomes?.of(rules, input));
  } catch (error) {
    return `threw ${String(error)}`;
  }
}

function inOneLine(code: string): string {
  return code.replace(/\s+/g, ' ').slice(0, 120);
}
