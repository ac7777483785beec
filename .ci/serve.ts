/** A small static server for the built app, with the headers that a real host should send. */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { gzipSync } from 'node:zlib';
import { cacheRule, SECURITY_HEADERS } from './headers.ts';

/** Content types by the end of a file's name. */
export const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.md': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.mp3': 'audio/mpeg',
};

/** The file that an address names, or undefined when it would leave the folder. */
export function fileOf(folder: string, path: string): string | undefined {
  let plain: string;
  try {
    plain = decodeURIComponent(path);
  } catch {
    return undefined;
  }
  const file = normalize(join(folder, plain.endsWith('/') ? `${plain}index.html` : plain));
  return file.startsWith(normalize(folder) + sep) ? file : undefined;
}

/** Answers one request from a folder. `path` is the address below the app's own. */
export async function answer(
  folder: string,
  path: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const file = fileOf(folder, path);
  const body = file === undefined ? undefined : await readFile(file).catch(() => undefined);
  if (file === undefined || body === undefined) {
    response
      .writeHead(404, { ...SECURITY_HEADERS, 'Content-Type': 'text/plain' })
      .end('Not here.\n');
    return;
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    return;
  }
  const type = TYPES[extname(file)] ?? 'application/octet-stream';
  const etag = `"${createHash('sha256').update(body).digest('base64url').slice(0, 22)}"`;
  const headers = {
    ...SECURITY_HEADERS,
    'Content-Type': type,
    'Cache-Control': cacheRule(path),
    ETag: etag,
    Vary: 'Accept-Encoding',
  };
  if (request.headers['if-none-match'] === etag) {
    response.writeHead(304, headers).end();
    return;
  }
  const zip = /^(text|application\/(json|manifest)|image\/svg)/.test(type) && acceptsGzip(request);
  const sent = zip ? gzipSync(body) : body;
  response.writeHead(200, {
    ...headers,
    'Content-Length': String(sent.byteLength),
    ...(zip ? { 'Content-Encoding': 'gzip' } : {}),
  });
  response.end(request.method === 'HEAD' ? undefined : sent);
}

const acceptsGzip = (request: IncomingMessage): boolean =>
  /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));

/**
 * Serves a folder. Takes the next port when one is taken, up to twenty of them.
 * @returns the server and the port that it got.
 */
export async function serve(
  folder: string,
  port: number,
  host: string,
): Promise<{ server: Server; port: number }> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://here').pathname;
    answer(folder, path, request, response).catch(() => response.destroy());
  });
  for (let tried = port; tried < port + 20; tried += 1) {
    if (await listens(server, tried, host)) return { server, port: tried };
  }
  throw new Error(`no free port from ${port} to ${port + 19}`);
}

function listens(server: Server, port: number, host: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException): void => {
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(error);
    };
    server.once('error', failed);
    server.listen(port, host, () => {
      server.off('error', failed);
      resolve(true);
    });
  });
}
