/** A screen that nobody sees, with a window manager, so that a window can be put away. */
import { type ChildProcess, spawn } from 'node:child_process';
import type { Readable } from 'node:stream';

export interface Screen {
  /** What `DISPLAY` is for a program on this screen. */
  readonly display: string;
  close(): void;
}

/** Starts Xvfb on a number that it finds free itself, and openbox on it. */
export async function openScreen(): Promise<Screen> {
  const server = spawn(
    'Xvfb',
    ['-displayfd', '3', '-screen', '0', '800x1000x24', '-nolisten', 'tcp'],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] },
  );
  const display = `:${await numberFrom(server)}`;
  const manager = spawn('openbox', [], {
    stdio: 'ignore',
    env: { ...process.env, DISPLAY: display },
  });
  const close = (): void => {
    manager.kill();
    server.kill();
  };
  process.once('exit', close);
  return {
    display,
    close() {
      process.off('exit', close);
      close();
    },
  };
}

function numberFrom(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error('Xvfb named no screen')), 20_000);
    server.once('error', reject);
    (server.stdio[3] as Readable).once('data', (bytes: Buffer) => {
      clearTimeout(late);
      resolve(bytes.toString().trim());
    });
  });
}
