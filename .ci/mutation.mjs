/**
 * `npm run mutation`: changes the rules one place at a time and asks whether a test notices. One
 * folder of rules after another, each held against the tests of that folder alone.
 *
 *   npm run mutation                    the folders of LED
 *   npm run mutation -- timeline cues   only these
 *   npm run mutation -- exchange 1/8 7  every line with the chance of one in eight, by the seed 7
 */
import { readdirSync, readFileSync } from 'node:fs';
import process from 'node:process';
import { setUp } from './setup.mjs';

/** What everything else stands on, and what reads what others sent. */
const LED = ['timeline', 'cues', 'track', 'session', 'exchange'];

setUp();
const { Stryker } = await import('@stryker-mutator/core');
const asked = process.argv.slice(2);
const folders = asked.filter((each) => /^[a-z]/.test(each));
/** One line of so many. */
const of = Number(asked.find((each) => /^1\/\d+$/.test(each))?.slice(2) ?? 1);
const seed = Number(asked.find((each) => /^\d+$/.test(each)) ?? 1);

for (const folder of folders.length > 0 ? folders : LED) {
  // Read by `mutation-tests.ts`, in a process that is begun from here.
  process.env.MUTATED = folder;
  const mutate = of === 1 ? [`src/domain/${folder}/**/*.ts`] : someLines(folder);
  if (mutate.length === 0) throw new Error(`no line of ${folder} was drawn`);
  await new Stryker({ configFile: '.ci/stryker.config.mjs', mutate }).runMutationTest();
}

/** Lines drawn at random, as ranges. A change that goes over several lines is not among them. */
function someLines(folder) {
  let state = seed;
  // Numerical Recipes, second edition, 7.1: a quick generator is enough to draw lines.
  const draw = () => {
    state = (state * 1664525 + 1013904223) % 2 ** 32;
    return state / 2 ** 32;
  };
  return readdirSync(`src/domain/${folder}`, { recursive: true })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .map((name) => `src/domain/${folder}/${name}`)
    .sort()
    .flatMap((file) =>
      readFileSync(file, 'utf8')
        .split('\n')
        .flatMap((_, n) => (draw() < 1 / of ? [`${file}:${n + 1}-${n + 1}`] : [])),
    );
}
