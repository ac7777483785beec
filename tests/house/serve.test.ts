import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as ask, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.ts';

const top = mkdtempSync(join(tmpdir(), 'towpath-serve-'));
const folder = join(top, 'dist');
let server: Server;
let port = 0;

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(top, 'secret.txt'), 'not yours');
  writeFileSync(join(folder, 'index.html'), '<p>Towpath</p>');
  writeFileSync(join(folder, 'sw.js'), 'self;');
  writeFileSync(join(folder, 'assets/voice-1a2b3c4d.bin'), Buffer.alloc(500, 1));
  ({ server, port } = await serve(folder, 45_173, '127.0.0.1'));
});

afterAll(() => {
  server.close();
  rmSync(top, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

/** Asks without tidying the path up first, as a browser would. */
const get = (path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> =>
  new Promise((resolve, reject) => {
    ask({ host: '127.0.0.1', port, path, headers, method }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(parts),
        }),
      );
    })
      .on('error', reject)
      .end();
  });

describe('the server of npm start', () => {
  it('HOUSE-9 gives the page at its top, with the policy, to be asked for every time', async () => {
    const page = await get('/');
    expect(page.body.toString()).toBe('<p>Towpath</p>');
    expect(page.headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(page.headers['cache-control']).toBe('no-cache');
    expect((await get('/sw.js')).headers['cache-control']).toBe('no-cache');
    const again = await get('/', { 'if-none-match': String(page.headers.etag) });
    expect(again.status).toBe(304);
  });

  it('HOUSE-9 lets only files with a hash in their name be kept unasked', async () => {
    const voice = await get('/assets/voice-1a2b3c4d.bin');
    expect(voice.headers['cache-control']).toContain('immutable');
    expect(voice.headers['content-length']).toBe('500');
  });

  it('HOUSE-9 sends text compressed to those who can take it', async () => {
    const page = await get('/', { 'accept-encoding': 'gzip' });
    expect(page.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(page.body).toString()).toBe('<p>Towpath</p>');
  });

  it('HOUSE-9 gives nothing outside its folder, however the path is written', async () => {
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '/%',
    ])
      expect([path, (await get(path)).status]).toEqual([path, 404]);
  });

  it('HOUSE-9 takes no other method, and the next port when one is taken', async () => {
    expect((await get('/', {}, 'POST')).status).toBe(405);
    const next = await serve(folder, port, '127.0.0.1');
    expect(next.port).toBeGreaterThan(port);
    next.server.close();
  });
});
