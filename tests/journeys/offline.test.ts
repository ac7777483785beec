import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { cautions } from '../../src/copy/cautions.ts';
import { log } from '../../src/copy/log.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import {
  button,
  followMarshMile,
  go,
  heard,
  MINUTE,
  openSession,
  start,
  visit,
} from '../drivers/browser/visit.ts';

journey(
  'REAL-7 after one visit, with the network gone, a new browser runs a session to its end',
  async (j) => {
    await visit(j.page, j.site);
    await j.browser.close();
    await j.site.cut();

    const page = await j.restart();
    await page.goto(j.site.url);
    await go(page, '/start');
    await followMarshMile(page);
    await openSession(page, MINUTE);
    await start(page);
    const first = await heard(page);
    await seconds(50);
    const last = await heard(page);
    expect(last.at - first.at).toBeCloseTo(last.clock - first.clock, 0);
    await page.waitForURL(/#\/felt\//);
    await go(page, '/done');
    await page.getByText(log.entry(1, 1)).waitFor();
    expect(j.site.asked.length).toBeGreaterThan(5);
  },
  { expected: /ERR_CONNECTION_REFUSED|Failed to fetch|fetching the script/ },
);

journey(
  'REAL-7 the same below a path of the host',
  async (j) => {
    await visit(j.page, j.site);
    await j.site.cut();
    await j.kill();
    const page = await j.restart();
    await page.goto(`${j.site.url}some/where`);
    await go(page, '/start');
    await followMarshMile(page);
    await openSession(page, MINUTE);
    await start(page);
    await seconds(3);
    expect((await heard(page)).at).toBeGreaterThan(2);
  },
  { base: '/club/app/', expected: /ERR_CONNECTION_REFUSED|Failed to fetch|fetching the script/ },
);

journey('REAL-8 while the voice is coming, the button says how far it is', async (j) => {
  const pack = voiceFile(j.site.files);
  j.site.slow(pack, 40_000);
  await j.page.goto(j.site.url);
  await followMarshMile(j.page);
  await go(j.page, '/p/marsh-mile/1/1');
  await button(j.page, before.readFirst).click();
  await button(j.page, cautions.read).click();
  const shown = new Set<string>();
  for (let look = 0; look < 12; look += 1) {
    const text = await j.page.getByRole('button', { name: /voice is coming/i }).innerText();
    shown.add(text);
    await seconds(0.5);
  }
  console.log([...shown].join(' | '));
  expect(shown.size).toBeGreaterThan(3);
  expect(await button(j.page, before.start).count()).toBe(0);
});

journey('REAL-8 with a damaged voice Start is not offered and the silent session is', async (j) => {
  const pack = voiceFile(j.site.files);
  j.site.replace(pack, Buffer.alloc(50_000, 7));
  await j.page.goto(j.site.url);
  await followMarshMile(j.page);
  await go(j.page, '/p/marsh-mile/1/1');
  await button(j.page, before.readFirst).click();
  await button(j.page, cautions.read).click();
  await j.page.getByText(before.damaged).waitFor();
  expect(await button(j.page, before.start).count()).toBe(0);

  await button(j.page, before.goSilent).click();
  await start(j.page);
  await j.page.getByRole('heading', { level: 1, name: 'EASY WALK' }).waitFor();
  const first = await j.page.getByRole('timer').innerText();
  await seconds(3);
  expect(await j.page.getByRole('timer').innerText()).not.toBe(first);
});

journey(
  'REAL-8 without the voice Start is not offered and the silent session is',
  async (j) => {
    j.site.lose(voiceFile(j.site.files));
    await j.page.goto(j.site.url);
    await followMarshMile(j.page);
    await go(j.page, '/p/marsh-mile/1/1');
    await button(j.page, before.readFirst).click();
    await button(j.page, cautions.read).click();
    await j.page.getByText(before.missing).waitFor();
    expect(await button(j.page, before.start).count()).toBe(0);
    await button(j.page, before.goSilent).click();
    await start(j.page);
  },
  { expected: /404|No offline use|bad-precaching/ },
);

journey('REAL-8 a damaged voice is mended by fetching it again', async (j) => {
  const pack = voiceFile(j.site.files);
  j.site.replace(pack, Buffer.alloc(50_000, 7));
  await j.page.goto(j.site.url);
  await followMarshMile(j.page);
  await go(j.page, '/p/marsh-mile/1/1');
  await button(j.page, before.readFirst).click();
  await button(j.page, cautions.read).click();
  await j.page.getByText(before.damaged).waitFor();
  j.site.replace(pack, null);
  await button(j.page, before.retry).click();
  await button(j.page, before.checkSkip).click();
  await button(j.page, before.start).waitFor();
});

function voiceFile(files: readonly string[]): string {
  const found = files.find((file) => /^assets\/voice.*\.(bin|mp3)$/.test(file));
  if (found === undefined) throw new Error('the build has no voice');
  return `/${found}`;
}
