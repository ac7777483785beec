/**
 * `npm test`: every check there is, in order, on a plain clone. The same command runs for a
 * person and for `.ci/run`. A step that fails does not stop the ones after it, unless they need it.
 *
 *   npm test                    everything
 *   npm test -- unit journeys   only these steps (what they need is made first)
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { provideTools } from './packages.mjs';
import { setUp } from './setup.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const reports = `${root}.cache/reports/`;
const node = (script, ...args) => [process.execPath, `node_modules/${script}`, ...args];
const vitest = (project) => ({ project });

/** @type {{ name: string, says: string, run: object[], needs?: string[] }[]} */
const STEPS = [
  {
    name: 'lint',
    says: 'format and lint',
    run: [node('@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.')],
  },
  {
    name: 'types',
    says: 'types, one project per runtime',
    run: ['src/domain', 'src/sw', 'src/platform/intake', 'tsconfig.json', 'tests'].map((project) =>
      node('typescript/bin/tsc', '-p', project),
    ),
  },
  { name: 'unused', says: 'nothing unused', run: [node('knip/bin/knip.js', '--no-progress')] },
  { name: 'unit', says: 'rules and parts', run: [vitest('unit'), vitest('ui')] },
  { name: 'build', says: 'the app is built', run: [node('vite/bin/vite.js', 'build')] },
  {
    name: 'audit',
    says: 'packages of others: licences, hashes, and advisories where they can be asked',
    run: [node('tsx/dist/cli.mjs', '.ci/audit.ts')],
    needs: ['build'],
  },
  { name: 'built', says: 'size and safety of the build', run: [vitest('built')], needs: ['build'] },
  { name: 'sound', says: 'the sound, decoded and measured', run: [vitest('sound')] },
  { name: 'voice', says: 'the voice, heard by a recogniser', run: [vitest('voice')] },
  { name: 'codes', says: 'codes, read by another decoder', run: [vitest('codes')] },
  { name: 'journeys', says: 'a real browser', run: [vitest('journeys')], needs: ['build'] },
  { name: 'pages', says: 'every page in a real browser', run: [vitest('pages')], needs: ['build'] },
  { name: 'engines', says: 'three engines', run: [vitest('engines')], needs: ['build'] },
];

setUp();
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !STEPS.some((step) => step.name === name));
if (unknown.length > 0) {
  console.error(
    `No such step: ${unknown.join(', ')}. Steps: ${STEPS.map((s) => s.name).join(', ')}`,
  );
  process.exit(2);
}
const wanted = asked.length === 0 ? STEPS : STEPS.filter((step) => isWanted(step.name));
const WITH_TOOLS = ['sound', 'voice', 'codes', 'journeys', 'pages', 'engines'];
if (wanted.some((step) => WITH_TOOLS.includes(step.name))) provideTools();
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

const done = [];
for (const step of wanted) done.push(runStep(step));

console.log('\nstep       time     result');
for (const { step, seconds, good, counts } of done) {
  const tests =
    counts.passed + counts.failed > 0 ? `  (${counts.passed} passed, ${counts.failed} failed)` : '';
  const time = `${seconds.toFixed(1)} s`.padStart(8);
  console.log(`${step.name.padEnd(9)} ${time}  ${good ? 'good' : 'FAILED'}  ${step.says}${tests}`);
}
// Once more at the end, where nothing stands between them and whoever looks.
for (const { counts } of done) {
  for (const name of counts.again) console.log(`passed at the second try: ${name}`);
  for (const name of counts.names) console.log(`failed: ${name}`);
}
const passed = done.reduce((sum, each) => sum + each.counts.passed, 0);
const failed = done.reduce((sum, each) => sum + each.counts.failed, 0);
const good = done.every((each) => each.good) && failed === 0 && (passed > 0 || asked.length > 0);
// A step without tests of its own that fails still has to show in the last line.
const shown = good ? 0 : Math.max(failed, done.filter((each) => !each.good).length, 1);
console.log(`\n${passed} passed, ${shown} failed`);
process.exit(good ? 0 : 1);

function isWanted(name) {
  return (
    asked.includes(name) ||
    STEPS.some((step) => asked.includes(step.name) && step.needs?.includes(name))
  );
}

function runStep(step) {
  console.log(`\n--- ${step.name}: ${step.says}`);
  const begun = performance.now();
  const counts = { passed: 0, failed: 0, names: [], again: [] };
  let good = (step.needs ?? []).every((name) => done.find((each) => each.step.name === name)?.good);
  if (!good) console.log(`left out, because ${step.needs.join(', ')} failed`);
  for (const part of good ? step.run : []) {
    const right = Array.isArray(part) ? runCommand(part) : runTests(part.project, counts);
    good = good && right;
  }
  return { step, good, counts, seconds: (performance.now() - begun) / 1000 };
}

function runCommand([command, ...args]) {
  return (
    spawnSync(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] }).status === 0
  );
}

/** Runs one vitest project. A test that was skipped or is still to be written has not passed. */
function runTests(project, counts) {
  const file = `${reports}${project}.json`;
  const again = `${reports}${project}-again.json`;
  const right = runCommand(
    node(
      'vitest/vitest.mjs',
      'run',
      `--project=${project}`,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
      '--reporter=./.ci/again.mjs',
      `--outputFile.again=${again}`,
    ),
  );
  if (!existsSync(file)) {
    counts.failed += 1;
    return false;
  }
  const report = JSON.parse(readFileSync(file, 'utf8'));
  counts.again.push(...JSON.parse(readFileSync(again, 'utf8')));
  const left = report.numPendingTests + report.numTodoTests;
  if (left > 0) console.log(`${left} tests of ${project} did not run: that counts as failed.`);
  const failed = report.numFailedTests + left;
  counts.passed += report.numPassedTests;
  for (const { name, status, assertionResults } of report.testResults) {
    const names = assertionResults
      .filter((each) => each.status === 'failed')
      .map(({ fullName }) => fullName);
    const isUnread = status === 'failed' && names.length === 0;
    counts.names.push(...(isUnread ? [name.replace(root, '')] : names));
  }
  // A file that cannot be loaded has no failed test, but the run has failed.
  counts.failed += right ? failed : Math.max(failed, 1);
  return right && failed === 0;
}
