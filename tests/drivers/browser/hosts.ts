/** Debian's web servers, each with the ready file of `docs/hosting` and the built app. */
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { EXAMPLE } from '../../../.ci/hosting.ts';
import { DIST } from '../built.ts';
import { ROOT } from '../tree.ts';

export interface Host {
  /** Address of the app, ending in a slash. */
  readonly url: string;
  /** Puts other files in the place of those that are served. */
  publish(files: Readonly<Record<string, string>>): void;
  /** Ends the server: the network is gone. */
  stop(): Promise<void>;
  start(): Promise<void>;
  close(): Promise<void>;
}

interface Kind {
  readonly file: string;
  /** The whole configuration around the ready file. */
  around(ready: string, port: number, folder: string): string;
  command(config: string): readonly [string, ...string[]];
}

const KINDS = {
  nginx: {
    file: 'nginx.conf',
    around: (ready, port, folder) => `
      ${process.getuid?.() === 0 ? 'user root;' : ''}
      pid ${folder}/pid; error_log ${folder}/errors; daemon off; worker_processes 1;
      events { worker_connections 64; }
      http {
        access_log off;
        client_body_temp_path ${folder}/t1; proxy_temp_path ${folder}/t2;
        fastcgi_temp_path ${folder}/t3; uwsgi_temp_path ${folder}/t4; scgi_temp_path ${folder}/t5;
        server { listen 127.0.0.1:${port}; ${ready} }
      }`,
    command: (config) => ['/usr/sbin/nginx', '-c', config],
  },
  lighttpd: {
    file: 'lighttpd.conf',
    around: (ready, port, folder) => `
server.port = ${port}
server.bind = "127.0.0.1"
server.errorlog = "${folder}/errors"
${ready}`,
    command: (config) => ['/usr/sbin/lighttpd', '-D', '-f', config],
  },
} as const satisfies Readonly<Record<string, Kind>>;

export const HOSTS = Object.keys(KINDS) as readonly (keyof typeof KINDS)[];

/** A port that is free now. */
const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });

async function answers(url: string, child: ChildProcess): Promise<void> {
  for (let turn = 0; turn < 100; turn += 1) {
    if (child.exitCode !== null) throw new Error(`the server ended with ${child.exitCode}`);
    const answer = await fetch(url).catch(() => undefined);
    if (answer !== undefined) return void (await answer.arrayBuffer());
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`nobody answers at ${url}`);
}

/** A web server of Debian's that serves a copy of the built app under the path of the example. */
export async function openHost(name: keyof typeof KINDS): Promise<Host> {
  const kind: Kind = KINDS[name];
  const folder = mkdtempSync(join(tmpdir(), `towpath-${name}-`));
  const www = join(folder, 'www');
  const app = join(www, EXAMPLE.path);
  mkdirSync(app, { recursive: true });
  cpSync(DIST, app, { recursive: true });
  const port = await freePort();
  const ready = readFileSync(join(ROOT, 'docs/hosting', kind.file), 'utf8');
  const config = join(folder, 'config');
  writeFileSync(config, kind.around(ready.replaceAll(EXAMPLE.folder, www), port, folder));
  const url = `http://localhost:${port}${EXAMPLE.path}`;
  let child: ChildProcess | undefined;

  const start = async (): Promise<void> => {
    const [program, ...given] = kind.command(config);
    child = spawn(program, given, { stdio: 'inherit' });
    await answers(url, child);
  };
  const stop = async (): Promise<void> => {
    const gone = child;
    if (gone === undefined) return;
    child = undefined;
    const ended = new Promise((resolve) => gone.once('exit', resolve));
    gone.kill('SIGTERM');
    await ended;
  };
  await start();
  return {
    url,
    publish(files) {
      for (const [path, text] of Object.entries(files)) writeFileSync(join(app, path), text);
    },
    start,
    stop,
    async close() {
      await stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
