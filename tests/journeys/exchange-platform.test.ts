import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect } from 'vitest';
import type { Code } from '../../src/app/exchange-contract.ts';
import { CODE_BYTES } from '../../src/app/exchange-sending.ts';
import { fewestLinks } from '../../src/domain/exchange/link.ts';
import { drawCode } from '../../src/platform/codes/draw.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { type Journey, journey } from '../drivers/browser/journey.ts';
import { codeOf, newLeader, nodeVerifies } from '../drivers/exchange/leader.ts';
import { otherOpen, otherPair, otherSeal } from '../drivers/exchange/other-hpke.ts';
import { blurred, type Grey, printed, toPgm } from '../drivers/exchange/picture.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { ROOT } from '../drivers/tree.ts';

const PASSPHRASE = 'four herons by the gate';
const ID = 'heron-loop-spring';
let script = '';

beforeAll(async () => {
  const result = await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      rolldownOptions: {
        input: `${ROOT}tests/drivers/browser/exchange-in-page.ts`,
        output: { format: 'iife', codeSplitting: false },
      },
    },
  });
  const [first] = Array.isArray(result) ? result : [result];
  if (first === undefined || !('output' in first)) throw new Error('nothing was built');
  script = first.output[0].code;
});

/** A page with sending and receiving alone, over the browser's own cryptography and memory. */
async function withExchange({ site }: Journey, page: Page): Promise<Page> {
  site.replace('/exchange.js', script);
  const html = '<!doctype html><link rel="icon" href="data:,"><script src="exchange.js"></script>';
  site.replace('/exchange.html', html);
  await page.goto(`${site.url}exchange.html`);
  return page;
}

const publish = (page: Page, weeks: number) =>
  page.evaluate(
    async ([text, passphrase]) => {
      const { publishing } = window.exchange;
      await publishing.getState().load();
      await publishing.getState().makeKeys(passphrase);
      const going = await publishing.getState().publish(text);
      if (!going.ok) throw new Error(going.error.code);
      return going.value;
    },
    [JSON.stringify(marshProgramme(weeks)), PASSPHRASE] as const,
  );

/** A photograph: not quite straight, not quite sharp, greyish, as JPEG. */
function photograph(picture: Grey): string {
  const how = ['-background', '#e8e8e8', '-rotate', '4', '-level', '-10%,110%', '-quality', '80'];
  const jpeg = execFileSync('convert', ['pgm:-', ...how, 'jpeg:-'], { input: toPgm(picture) });
  return jpeg.toString('base64');
}

const photographs = (codes: readonly Code[]): readonly string[] =>
  codes.map((code) => photograph(blurred(printed(code, 6), 1.2)));

const openPicture = (page: Page, base64: string) =>
  page.evaluate(async (picture) => {
    const bytes = Uint8Array.from(atob(picture), (letter) => letter.charCodeAt(0));
    const { received } = window.exchange;
    await received.getState().openFile(new Blob([bytes], { type: 'image/jpeg' }));
    const state = received.getState().received;
    if (state.name === 'refused') return state.problem.code;
    return state.name === 'preview' ? state.preview.verdict.kind : state.name;
  }, base64);

journey(
  'XCHG-17 a browser keeps keys over a kill, uses them, and gives them to nobody',
  async (j) => {
    const page = await withExchange(j, j.page);
    const first = await publish(page, 4);
    expect(first).toMatchObject({ revision: 1, signed: true, linkIsLocal: true });
    await j.kill();
    const again = await withExchange(j, await j.restart());
    const { sent, exported, next } = await again.evaluate(async (id) => {
      const { publishing, ports } = window.exchange;
      await publishing.getState().load();
      const before = publishing.getState().sent[id];
      const changed = { ...JSON.parse(before?.text ?? '{}'), title: 'Changed' };
      const going = await publishing.getState().publish(JSON.stringify(changed));
      const open = indexedDB.open('towpath');
      await new Promise((done) => open.addEventListener('success', done));
      const get = open.result.transaction('keys').objectStore('keys').get('leader');
      await new Promise((done) => get.addEventListener('success', done));
      const keys = [get.result.signWith, get.result.openWith] as CryptoKey[];
      const tried = await Promise.allSettled(
        keys.map((key) => crypto.subtle.exportKey('jwk', key)),
      );
      await ports.keys.read();
      return {
        next: going.ok ? going.value.revision : going.error.code,
        sent: publishing.getState().sent[id],
        exported: tried.map(({ status }) => status),
      };
    }, ID);
    expect(next).toBe(2);
    expect(exported).toEqual(['rejected', 'rejected']);
    if (sent === undefined) throw new Error('nothing was sent');
    const { sign } = JSON.parse(sent.text).leader;
    expect(nodeVerifies(sign, Buffer.from(sent.text, 'utf8'), sent.signature)).toBe(true);
  },
);

journey(
  'TELL-9, TELL-12 a browser opens, after a kill, what another implementation sealed for its leader, and seals for others',
  async (j) => {
    await publish(await withExchange(j, j.page), 4);
    await j.kill();
    const again = await withExchange(j, await j.restart());
    const { pair, seal } = await otherPair();
    const told = 'What was told, and nothing else.';
    const leader = await again.evaluate(async () => {
      const keys = await window.exchange.ports.keys.read();
      return keys.ok ? (keys.value?.seal ?? '') : keys.error.code;
    });
    const given = [...(await otherSeal(leader, Buffer.from(told)))];
    const { opened, sealed } = await again.evaluate(
      async ([bytes, key, words]) => {
        const { ports } = window.exchange;
        const opened = await ports.keys.open(Uint8Array.from(bytes));
        const sealed = await ports.seal(key, new TextEncoder().encode(words));
        return {
          opened: opened.ok ? new TextDecoder().decode(opened.value) : opened.error.code,
          sealed: sealed.ok ? [...sealed.value] : [],
        };
      },
      [given, seal, told] as const,
    );
    expect(opened).toBe(told);
    expect(Buffer.from(await otherOpen(pair, Uint8Array.from(sealed))).toString()).toBe(told);
  },
);

journey('XCHG-22 a second browser takes a programme from photographs of its symbols', async (j) => {
  const page = await withExchange(j, j.page);
  const going = await publish(page, 12);
  expect(going.codes).toHaveLength(2);
  const profile = newProfile();
  const second = await openBrowser(profile);
  try {
    const other = await withExchange(j, j.watch(await second.tab()));
    await takeFromPictures(other, photographs(going.codes));
  } finally {
    await second.close();
    profile.remove();
  }
});

async function takeFromPictures(page: Page, pictures: readonly string[]): Promise<void> {
  const [one = '', two = ''] = pictures;
  expect(await openPicture(page, two)).toBe('parts');
  expect(await openPicture(page, one)).toBe('new');
  const kept = await page.evaluate(async () => {
    const { received, ports } = window.exchange;
    await received.getState().accept('keep');
    const stored = await ports.store.programmes();
    return stored.ok ? stored.value : [];
  });
  expect(kept).toMatchObject([{ id: ID, signature: expect.stringMatching(/^[\w-]{86}$/) }]);
}

/** A film of one still picture, as the browser's pretended camera shows it. */
function film(picture: Grey): { readonly path: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'camera-'));
  const path = join(folder, 'camera.mjpeg');
  const how = [
    '-gravity',
    'center',
    '-background',
    '#ddd',
    '-extent',
    '1280x960',
    '-quality',
    '85',
  ];
  const frame = execFileSync('convert', ['pgm:-', ...how, 'jpeg:-'], { input: toPgm(picture) });
  writeFileSync(path, Buffer.concat(Array.from({ length: 5 }, () => frame)));
  return { path, remove: () => rmSync(folder, { recursive: true }) };
}

const leader = newLeader();
const [shortLink = ''] =
  fewestLinks('https://club.example/app/', codeOf(leader, marshProgramme(3)), CODE_BYTES) ?? [];
const shown = drawCode(shortLink);
if (shown === undefined) throw new Error('one symbol does not hold three weeks');
const camera = film(printed(shown, 7));
afterAll(camera.remove);

journey(
  'XCHG-22 a programme is taken from the camera, which is then let go',
  async (j) => {
    const page = await withExchange(j, j.page);
    const seen = await page.evaluate(async () => {
      const video = document.createElement('video');
      document.body.append(video);
      const { received } = window.exchange;
      const watching = await received.getState().scan(video);
      if (!watching.ok) throw new Error(watching.error.code);
      await new Promise<void>((done) => {
        received.subscribe(({ received: { name } }) => name === 'preview' && done());
      });
      const state = received.getState().received;
      const isOver = video.srcObject === null;
      return { isOver, title: state.name === 'preview' && state.preview.programme.title };
    });
    expect(seen).toEqual({ isOver: true, title: '3 weeks to the Heron Loop' });
  },
  {
    switches: [
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${camera.path}`,
    ],
  },
);
