/**
 * Looks at the packages of others: known advisories where npm's host can be asked, and what can be
 * seen without any network. Exits with 1 when something is wrong. That the host could not be asked
 * is said and does not fail: then advisories have not been looked at in that run.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { adviceIn, bundledNames, lockProblems, shippedNames } from './shipped.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (path: string): string => readFileSync(`${root}${path}`, 'utf8');
const ASKED_AT_MOST_MS = 60_000;

const wrong: string[] = [];
const lock = JSON.parse(read('package-lock.json'));
const shipped = new Set(shippedNames(lock));
wrong.push(...lockProblems(lock));
console.log(
  `${Object.keys(lock.packages).length - 1} packages in the lock, ${shipped.size} shipped`,
);

const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], {
  cwd: root,
  encoding: 'utf8',
  timeout: ASKED_AT_MOST_MS,
  stdio: ['ignore', 'pipe', 'ignore'],
  shell: process.platform === 'win32',
});
const advice = adviceIn(stdout ?? '');
if (advice.asked) {
  wrong.push(...advice.grave.map((each) => `advisory: ${each}`));
  console.log(`advisories: asked, ${advice.grave.length} of moderate or graver in what is shipped`);
} else {
  console.log(`advisories: NOT LOOKED AT, the host of packages did not say (${advice.why}).`);
  console.log('What follows needs no network and was looked at all the same.');
}

for (const name of bundledNames(read('dist/licences.md')))
  if (!shipped.has(name)) wrong.push(`${name} is in the built app and not in what is shipped`);

for (const each of wrong) console.error(each);
console.log(wrong.length === 0 ? 'nothing wrong was found' : `${wrong.length} wrong`);
process.exit(wrong.length === 0 ? 0 : 1);
