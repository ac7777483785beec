/**
 * `npm run mutation`: changes the rules one place at a time and asks whether a test notices. One
 * folder of rules after another, each held against the tests of that folder alone.
 *
 *   npm run mutation                    the folders of LED
 *   npm run mutation -- timeline cues   only these
 *   npm run mutation -- exchange 1/8 7  every line with the chance of one in eight, by the seed 7
 *   npm run mutation -- session again   what no test noticed the last time, with more patience,
 *                                       and what was written anew since
 *   npm run mutation -- session rest    only the files that were not tried yet as they are now
 *
 * A folder goes a few files at a time: a run that is cut off has kept what it came to, and what is
 * known of the others from before.
 */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import process from 'node:process';
import { setUp } from './setup.mjs';

/** What everything else stands on, and what reads what others sent. */
const LED = ['timeline', 'cues', 'track', 'session', 'exchange'];
/** How long a property is looked at, in milliseconds: of thousands of changes, of what is left. */
const QUICK = 100;
const PATIENT = 400;
/** Every part begins with all tests of its folder, which takes a few seconds. */
const FILES_IN_PART = 8;

setUp();
const { Stryker } = await import('@stryker-mutator/core');
const asked = process.argv.slice(2);
const isAgain = asked.includes('again');
const isRest = asked.includes('rest');
const folders = asked.filter((each) => /^[a-z]/.test(each) && !['again', 'rest'].includes(each));
/** One line of so many. */
const of = Number(asked.find((each) => /^1\/\d+$/.test(each))?.slice(2) ?? 1);
const seed = Number(asked.find((each) => /^\d+$/.test(each)) ?? 1);

mkdirSync('.cache/reports/mutation', { recursive: true });
for (const folder of folders.length > 0 ? folders : LED) {
  const report = `.cache/reports/mutation/${folder}.json`;
  const isKnown = isAgain || (of === 1 && existsSync(report));
  let changes = isKnown ? JSON.parse(readFileSync(report, 'utf8')) : [];
  changes = changes.filter(({ place: [file] }) => existsSync(file));
  // In a file that was written anew since, nothing is where it was.
  const [same, moved] = parted(changes, ({ place: [file], source }) => source === sourceOf(file));
  const rewritten = new Set(moved.map(({ place: [file] }) => file));
  const tried = new Set(same.map(({ place: [file] }) => file));
  const untried = () => linesOf(folder).filter((file) => !tried.has(file));
  const again = () => [...placesOf(same.filter(isLeft)), ...rewritten];
  const mutate = isAgain ? again() : isRest ? untried() : linesOf(folder);
  if (mutate.length === 0) throw new Error(`nothing of ${folder} is to be changed`);
  // Read by `mutation-tests.ts` and `property-time.ts`, in a process that is begun from here.
  process.env.MUTATED = folder;
  process.env.PROPERTY_MS = String(isAgain ? PATIENT : QUICK);
  for (const part of inParts(mutate)) {
    const results = await new Stryker({ configFile: '.ci/stryker.config.mjs', mutate: part })
      .runMutationTest()
      .then((all) => all.map(asChange).filter(({ status }) => status !== 'Ignored'));
    // Of a file that was changed as a whole nothing older holds.
    const wholes = new Set(part.filter((place) => !place.includes(':')));
    const places = new Set(results.map(keyOf));
    const older = changes.filter((each) => !wholes.has(each.place[0]) && !places.has(keyOf(each)));
    changes = [...older, ...results];
    writeFileSync(`${report}.new`, JSON.stringify(changes, undefined, 1));
    renameSync(`${report}.new`, report);
  }
  tell(folder, changes);
}

/** One change: where it is, what stands there in its place, and what became of it. */
function asChange({ fileName, location, replacement, status }) {
  const file = fileName.replace(`${process.cwd()}/`, '');
  const { start, end } = location;
  const range = `${start.line}:${start.column}-${end.line}:${end.column}`;
  return { place: [file, range, replacement], status, source: sourceOf(file) };
}

function keyOf({ place }) {
  return JSON.stringify(place);
}

/** What tells one state of a file from another. */
function sourceOf(file) {
  if (!existsSync(file)) return '';
  return createHash('sha256').update(readFileSync(file)).digest('hex').slice(0, 12);
}

function parted(all, isFirst) {
  return [all.filter(isFirst), all.filter((each) => !isFirst(each))];
}

function isLeft({ status }) {
  return status === 'Survived' || status === 'NoCoverage';
}

/** As ranges to change in: there columns count from 0, in what came of a change from 1. */
function placesOf(changes) {
  const from0 = (range) => range.replace(/:(\d+)/g, (_, column) => `:${column - 1}`);
  return [...new Set(changes.map(({ place: [file, range] }) => `${file}:${from0(range)}`))];
}

function tell(folder, changes) {
  const left = changes.filter(isLeft);
  for (const { place } of left) console.log(`left: ${place[0]}:${place[1]} -> ${place[2]}`);
  const noticed = ((1 - left.length / changes.length) * 100).toFixed(1);
  console.log(`${folder}: ${changes.length} changes, ${noticed} % noticed, ${left.length} left`);
}

/** Places, all those of a file together. */
function inParts(places) {
  const files = new Map();
  for (const place of places) {
    const [file = ''] = place.split(':');
    files.set(file, [...(files.get(file) ?? []), place]);
  }
  const all = [...files.values()];
  const parts = Array.from({ length: Math.ceil(all.length / FILES_IN_PART) }, (_, n) => n);
  return parts.map((n) => all.slice(n * FILES_IN_PART, (n + 1) * FILES_IN_PART).flat());
}

/** All files of a folder, or lines drawn at random: then a change over several is not among them. */
function linesOf(folder) {
  const files = readdirSync(`src/domain/${folder}`, { recursive: true })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .map((name) => `src/domain/${folder}/${name}`)
    .sort();
  if (of === 1) return files;
  let state = seed;
  // Numerical Recipes, second edition, 7.1: a quick generator is enough to draw lines.
  const draw = () => {
    state = (state * 1664525 + 1013904223) % 2 ** 32;
    return state / 2 ** 32;
  };
  return files.flatMap((file) =>
    readFileSync(file, 'utf8')
      .split('\n')
      .flatMap((_, n) => (draw() < 1 / of ? [`${file}:${n + 1}-${n + 1}`] : [])),
  );
}
