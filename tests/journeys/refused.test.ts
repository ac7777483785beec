import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { join } from '../../src/copy/join.ts';
import { running } from '../../src/copy/running.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import {
  followMarshMile,
  go,
  heard,
  openFile,
  SEVERAL,
  startOn,
  visit,
} from '../drivers/browser/visit.ts';

const FILE = readFileSync(
  new URL('../fixtures/programmes/marsh-mile.json', import.meta.url),
  'utf8',
);

/** Everything that the app has stored, as text. */
const stored = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const names = (await indexedDB.databases()).map(({ name }) => name ?? '').sort();
    const all: unknown[] = [];
    for (const name of names) {
      const db = await new Promise<IDBDatabase>((resolve, reject) => {
        const open = indexedDB.open(name);
        open.onsuccess = () => resolve(open.result);
        open.onerror = () => reject(open.error);
      });
      for (const store of db.objectStoreNames) {
        const values = await new Promise((resolve) => {
          const get = db.transaction(store).objectStore(store).getAll();
          get.onsuccess = () => resolve(get.result);
        });
        all.push([name, store, values]);
      }
      db.close();
    }
    return JSON.stringify(all);
  });

const changed = (change: (file: Record<string, unknown>) => void): string => {
  const file = JSON.parse(FILE) as Record<string, unknown>;
  change(file);
  return JSON.stringify(file);
};

const week = (file: Record<string, unknown>): Record<string, unknown> =>
  (file.weeks as Record<string, unknown>[])[0] ?? {};

const BAD: readonly (readonly [string, string | Buffer, RegExp])[] = [
  ['too large', `${FILE}${' '.repeat(300_000)}`, /too large to be a programme/],
  ['not JSON', '{ "format": "towpath-programme/1", ', /JSON/],
  ['bytes that are no text', Buffer.from([0xff, 0xfe, 0x00, 0x81, 0x99]), /neither a programme/],
  ['of another format', changed((f) => (f.format = 'something-else/1')), /format/],
  ['of a later version', changed((f) => (f.format = 'towpath-programme/9')), /newer Towpath/],
  ['with a wrong type', changed((f) => (week(f).effort = 'hard')), /weeks\[0\]\.effort/],
  [
    'with an unknown group',
    changed((f) => (week(f).sessions = { heron: '5 min walk' })),
    /weeks\[0\]\.sessions/,
  ],
  [
    'with a plan that does not parse',
    changed((f) => (week(f).sessions = { wren: '5 min walk; 400 m run', curlew: '5 min walk' })),
    /weeks\[0\]\.sessions\.wren/,
  ],
];

journey(
  'REAL-14 a file that is no programme is refused in a sentence with its place, and changes nothing',
  async (j) => {
    await visit(j.page, j.site);
    await followMarshMile(j.page);
    await go(j.page, '/start');
    await j.page.getByText(welcome.file.title).waitFor();
    await seconds(0.5);
    const before = await stored(j.page);
    expect(before).toContain('A mile on the marsh');
    for (const [what, body, says] of BAD) {
      await openFile(j.page, 'programme.json', body);
      const alert = j.page.getByRole('alert').filter({ hasText: says });
      await alert.waitFor();
      await j.page.getByText(join.refused).waitFor();
      console.log(`${what}: ${await alert.innerText()}`);
      expect(await stored(j.page), what).toBe(before);
      await go(j.page, '/start');
      await j.page.getByText(welcome.file.title).waitFor();
    }
  },
);

journey(
  'REAL-15 with the storage full a session goes on, says so, and is written when it can be',
  async (j) => {
    await startOn(j.page, j.site, SEVERAL);
    await seconds(3);
    const { origin } = new URL(j.site.url);
    const session = await j.browser.context.newCDPSession(j.page);
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    // The browser believes for half a minute in the room that it saw last.
    await j.page.getByText(running.unsaved).waitFor({ timeout: 60_000 });
    const first = await heard(j.page);
    await seconds(3);
    const then = await heard(j.page);
    expect(then.at - first.at).toBeGreaterThan(2);

    await session.send('Storage.overrideQuotaForOrigin', { origin });
    await j.page.getByText(running.unsaved).waitFor({ state: 'detached', timeout: 60_000 });
    const { at } = await heard(j.page);
    await j.kill();
    const page = await j.restart();
    await page.goto(j.site.url);
    const said = /at (\d+):(\d\d) of/.exec(await page.getByText(/You were at/).innerText());
    expect(Math.abs(Number(said?.[1]) * 60 + Number(said?.[2]) - at)).toBeLessThan(6);
  },
  { expected: /quota/i },
);
