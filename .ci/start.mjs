/** `npm start`: from a plain clone to a served app, with nothing but Node and npm. */
import { spawn, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { setUp } from './setup.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

setUp();
const built = spawnSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build'], {
  cwd: root,
  stdio: ['ignore', 'ignore', 'inherit'],
});
if (built.status !== 0) {
  console.error('The app could not be built. The message above says why.');
  process.exit(1);
}
const shown = spawn(
  process.execPath,
  ['--import', 'tsx', '.ci/show.ts', ...process.argv.slice(2)],
  { cwd: root, stdio: 'inherit' },
);
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => shown.kill(signal));
shown.on('exit', (code) => process.exit(code ?? 0));
