/**
 * `npm run mutation`: changes the rules one place at a time and asks whether a test notices. One
 * folder of rules after another, each held against the tests of that folder alone.
 *
 *   npm run mutation                    the folders of LED
 *   npm run mutation -- timeline cues   only these
 */
import process from 'node:process';
import { setUp } from './setup.mjs';

/** What everything else stands on, and what reads what others sent. */
const LED = ['timeline', 'cues', 'track', 'session', 'exchange'];

setUp();
const { Stryker } = await import('@stryker-mutator/core');
const asked = process.argv.slice(2);
for (const folder of asked.length > 0 ? asked : LED) {
  // Read by `mutation-tests.ts`, in a process that is begun from here.
  process.env.MUTATED = folder;
  const configFile = '.ci/stryker.config.mjs';
  await new Stryker({ configFile, mutate: [`src/domain/${folder}/**/*.ts`] }).runMutationTest();
}
