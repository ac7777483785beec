import { createHash } from 'node:crypto';
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { createPackSource } from '../../../src/platform/audio/pack.ts';
import { silentPack } from '../../drivers/voice.ts';

const { manifest, audio } = silentPack();
/** Its own hash, by Node's crypto: the source under test uses the browser's. */
const sha256 = createHash('sha256').update(audio).digest('hex');
const GOOD = JSON.stringify({ ...manifest, sha256 });

let close = (): void => {};
afterEach(() => close());

async function served(answer: RequestListener) {
  const server = createServer(answer);
  await new Promise<void>((resolve) => server.listen(0, resolve));
  close = () => void server.close();
  const url = `http://localhost:${(server.address() as AddressInfo).port}`;
  return createPackSource({ manifest: `${url}/manifest.json`, audio: `${url}/voice.bin` });
}

const serving =
  (manifestText: string, bytes: Uint8Array): RequestListener =>
  (request, response) => {
    const json = request.url?.endsWith('.json');
    const body = json ? Buffer.from(manifestText) : Buffer.from(bytes);
    response.writeHead(200, { 'content-length': body.length }).end(body);
  };

describe('the voice pack on its way', () => {
  it('SND-11 comes whole, tells how far it is, and is checked', async () => {
    const source = await served(serving(GOOD, audio));
    const steps: { loaded: number; total: number }[] = [];
    const pack = await source.load((step) => steps.push(step));
    expect(pack.ok && pack.value.audio.length).toBe(audio.length);
    expect(steps.at(-1)).toEqual({ loaded: audio.length, total: audio.length });
    expect(steps.every(({ loaded, total }) => loaded <= total)).toBe(true);
  });

  it('SND-11 with one byte changed it is damaged', async () => {
    const other = audio.slice();
    other[5000] = (other[5000] ?? 0) ^ 1;
    const source = await served(serving(GOOD, other));
    expect(await source.load(() => {})).toEqual({ ok: false, error: 'damaged' });
  });

  it('SND-11 cut short, or with a manifest that is none, it is damaged', async () => {
    const cut = await served(serving(GOOD, audio.slice(0, -96)));
    expect(await cut.load(() => {})).toEqual({ ok: false, error: 'damaged' });
    close();
    const none = await served(serving('not json', audio));
    expect(await none.load(() => {})).toEqual({ ok: false, error: 'damaged' });
  });

  it('SND-11 without one of its clips it is damaged', async () => {
    const { 'activity.run': _, ...clips } = manifest.clips;
    const source = await served(serving(JSON.stringify({ ...manifest, sha256, clips }), audio));
    expect(await source.load(() => {})).toEqual({ ok: false, error: 'damaged' });
  });

  it('SND-11 that is not there, or whose connection breaks, it is missing', async () => {
    const absent = await served((_, response) => void response.writeHead(404).end());
    expect(await absent.load(() => {})).toEqual({ ok: false, error: 'missing' });
    close();
    const broken = await served((request, response) => {
      if (request.url?.endsWith('.json')) response.end(GOOD);
      else {
        response.writeHead(200, { 'content-length': audio.length }).write(audio.slice(0, 1000));
        setTimeout(() => response.destroy(), 20);
      }
    });
    expect(await broken.load(() => {})).toEqual({ ok: false, error: 'missing' });
  });

  it('SND-11 tried again after damage, the same source brings a good one', async () => {
    let good = false;
    const source = await served((request, response) =>
      serving(GOOD, good ? audio : audio.slice(0, 960))(request, response),
    );
    expect((await source.load(() => {})).ok).toBe(false);
    good = true;
    expect((await source.load(() => {})).ok).toBe(true);
  });
});
