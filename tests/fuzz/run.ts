/**
 * `npm run fuzz`: mutated links and files through the app's own way of receiving.
 *
 *   npm run fuzz                             100,000 cases
 *   npm run fuzz -- --runs 5000 --seed 7     as many as asked, the same again
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { answerComplaint, hostileAnswer, makeAnswers } from './answers.ts';
import { hostileIntake, intakeComplaint } from './intake.ts';
import { type Case, KINDS, makeSeeds, mutated } from './mutate.ts';
import { randomFrom } from './random.ts';
import { complaint, createReceiver } from './receiver.ts';

const given = (name: string): number | undefined => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : Number(process.argv[at + 1]);
};

const runs = given('runs') ?? 100_000;
const seed = given('seed') ?? Math.floor(Math.random() * 2 ** 32);
/** Beyond what the runner itself takes: a case that kept hold of a bomb would be seen. */
const MEMORY_MAX = 400 * 1024 * 1024;
const SHOWN = 10_000;
const FOLDER = '.cache/fuzz';

console.log(`seed ${seed}, ${runs} cases, ${KINDS.length} ways`);
const seeds = makeSeeds();
const receiver = createReceiver(seeds);
const outcomes = new Map<string, number>();
const found: string[] = [];
let slowest = { time: 0, kind: '' };
const before = process.memoryUsage.rss();
let most = before;

/** Signatures are new in every run: the case itself is written down, not only its number. */
function keep(n: number, item: Case, problem: string): void {
  mkdirSync(FOLDER, { recursive: true });
  const file = `${FOLDER}/${seed + n}.txt`;
  writeFileSync(file, 'text' in item ? item.text : item.file);
  found.push(`${file} (${item.kind}): ${problem}`);
}

for (let n = 0; n < runs; n++) {
  const item = mutated(seeds, randomFrom(seed + n));
  const begun = performance.now();
  try {
    const state = await receiver.give(item);
    const problem = complaint(state, seeds);
    if (problem !== undefined) keep(n, item, problem);
    const outcome =
      state.name === 'refused'
        ? `refused: ${state.problem.code}`
        : state.name === 'preview'
          ? `shown: ${state.preview.verdict.kind}, ${state.preview.signed ? 'signed' : 'unsigned'}`
          : state.name;
    outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
  } catch (error) {
    keep(n, item, `threw ${String(error)}`);
  }
  const time = performance.now() - begun;
  if (time > slowest.time) slowest = { time, kind: item.kind };
  if (n % 100 === 0) most = Math.max(most, process.memoryUsage.rss());
  if ((n + 1) % SHOWN === 0) console.log(`${n + 1} cases, ${found.length} found`);
}

/** Each answer is sealed and opened: far slower than a programme, so a tenth as many. */
const answers = await makeAnswers();
for (let n = 0; n < runs / 10; n++) {
  const item = await hostileAnswer(answers, randomFrom(seed + n));
  try {
    const problem = await answerComplaint(answers, item);
    if (problem !== undefined) keep(n, { kind: item.kind, text: item.code }, problem);
  } catch (error) {
    keep(n, { kind: item.kind, text: item.code }, `threw ${String(error)}`);
  }
  if (n % 100 === 0) most = Math.max(most, process.memoryUsage.rss());
}
console.log(`${Math.ceil(runs / 10)} answers`);

/** Each holds several answers: as many again as of answers. */
for (let n = 0; n < runs / 10; n++) {
  const item = hostileIntake(answers, randomFrom(seed + n));
  try {
    const problem = await intakeComplaint(answers, item);
    if (problem !== undefined) keep(n, item, problem);
  } catch (error) {
    keep(n, item, `threw ${String(error)}`);
  }
  if (n % 100 === 0) most = Math.max(most, process.memoryUsage.rss());
}
console.log(`${Math.ceil(runs / 10)} chats, archives and records`);

for (const [outcome, count] of [...outcomes].sort((a, b) => b[1] - a[1]))
  console.log(`${String(count).padStart(8)}  ${outcome}`);
const grown = most - before;
console.log(`memory grew by at most ${Math.round(grown / 1024 / 1024)} MiB`);
console.log(`slowest case ${slowest.time.toFixed(0)} ms (${slowest.kind})`);
if (receiver.writes.length > 0) found.push(`${receiver.writes.length} programmes were stored`);
if (grown > MEMORY_MAX) found.push('memory was not bounded');
for (const each of found.slice(0, 50)) console.error(each);
console.log(`${found.length} found, seed ${seed}`);
process.exit(found.length > 0 ? 1 : 0);
