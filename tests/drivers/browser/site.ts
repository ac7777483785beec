/** Serves the built app to a real browser, and can fail the way real networks and hosts do. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { extname } from 'node:path';
import { answer, TYPES } from '../../../.ci/serve.ts';
import { allFiles, DIST } from '../built.ts';

export interface Site {
  /** Address of the app, ending in a slash. */
  readonly url: string;
  /** The files that it has, as addresses below the app. */
  readonly files: readonly string[];
  /** What was asked for since the start, as paths below the app. */
  readonly asked: readonly string[];
  /** Gives other bytes for a path from now on; null gives the real ones back. */
  replace(path: string, body: string | Uint8Array | null): void;
  /** Answers a path with "not found" from now on, or as it is told. */
  lose(path: string, how?: 404 | 500 | 'broken off'): void;
  /** What was lost is there again. */
  find(path: string): void;
  /** Sends a path slowly: this many bytes a second. */
  slow(path: string, bytesPerSecond: number): void;
  /** Ends every connection and takes no more: the network is gone. */
  cut(): Promise<void>;
  /** Listens again at the same address. */
  restore(): Promise<void>;
  close(): Promise<void>;
}

/**
 * @param options `base` is the path that the app stands under, such as `/` or `/club/app/`.
 */
export async function openSite(options: { base?: string } = {}): Promise<Site> {
  const base = options.base ?? '/';
  const replaced = new Map<string, string | Uint8Array>();
  const slowed = new Map<string, number>();
  const lost = new Map<string, 404 | 500 | 'broken off'>();
  const asked: string[] = [];
  const sockets = new Set<Socket>();

  const server = createServer((request, response) => {
    const full = new URL(request.url ?? '/', 'http://here').pathname;
    if (!full.startsWith(base)) {
      response.writeHead(404).end();
      return;
    }
    const path = `/${full.slice(base.length)}`;
    asked.push(path);
    const other = replaced.get(path);
    const rate = slowed.get(path);
    const loss = lost.get(path);
    if (loss === 'broken off') {
      response.writeHead(200, { 'Content-Length': '5000' });
      response.write('half of it', () => response.destroy());
    } else if (loss !== undefined) {
      response.writeHead(loss).end();
    } else if (other !== undefined) {
      const type = TYPES[extname(path)] ?? 'application/octet-stream';
      response.writeHead(200, { 'Content-Type': type, 'Cache-Control': 'no-cache' }).end(other);
    } else if (rate !== undefined) {
      void sendSlowly(path, rate, response);
    } else {
      answer(DIST, path, request, response).catch(() => response.destroy());
    }
  });
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  await listen(server, 0);
  const { port } = server.address() as AddressInfo;
  const cut = async (): Promise<void> => {
    if (!server.listening) return;
    const closed = new Promise((resolve) => server.close(resolve));
    for (const socket of sockets) socket.destroy();
    await closed;
  };

  return {
    url: `http://localhost:${port}${base}`,
    files: allFiles(),
    asked,
    replace: (path, body) =>
      void (body === null ? replaced.delete(path) : replaced.set(path, body)),
    lose: (path, how = 404) => void lost.set(path, how),
    find: (path) => void lost.delete(path),
    slow: (path, bytesPerSecond) => void slowed.set(path, bytesPerSecond),
    cut,
    restore: () => listen(server, port),
    close: cut,
  };
}

async function sendSlowly(
  path: string,
  rate: number,
  response: import('node:http').ServerResponse,
): Promise<void> {
  const { readFile } = await import('node:fs/promises');
  const body = await readFile(`${DIST}${path}`);
  response.writeHead(200, {
    'Content-Type': 'application/octet-stream',
    'Content-Length': String(body.byteLength),
    'Cache-Control': 'no-store',
  });
  const step = Math.max(1, Math.round(rate / 10));
  for (let at = 0; at < body.byteLength && !response.destroyed; at += step) {
    response.write(body.subarray(at, at + step));
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  response.end();
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve();
    });
  });
}
