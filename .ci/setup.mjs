/**
 * Installs what package-lock.json says when node_modules is missing or older than it.
 * Needs nothing but Node and npm. `--quiet` says nothing when there was nothing to do.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const quiet = process.argv.includes('--quiet');

/** npm writes this file at the end of every install, so its time is the install's time. */
const installed = `${root}node_modules/.package-lock.json`;
const lock = `${root}package-lock.json`;

/** @returns {boolean} whether node_modules is there and not older than the lock */
function isInstalled() {
  return existsSync(installed) && statSync(installed).mtimeMs >= statSync(lock).mtimeMs;
}

/** Throws when the installation fails. */
export function setUp() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Node 20.19 or newer is needed; this is ${process.versions.node}.`);
    process.exit(1);
  }
  if (isInstalled()) {
    if (!quiet) console.log('Packages are installed.');
    return;
  }
  console.error('Installing packages (npm ci) ...');
  const run = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: root,
    // Standard output stays free for the commands that print one line of JSON.
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (run.status !== 0) {
    console.error('npm ci failed. The message above says why.');
    process.exit(1);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) setUp();
