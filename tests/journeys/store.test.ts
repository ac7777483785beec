import type { Page } from 'playwright-core';
import { build } from 'vite';
import { beforeAll, expect } from 'vitest';
import type { StoredSheet } from '../../src/app/exchange-ports.ts';
import { nobody } from '../../src/domain/board/written.ts';
import type { SessionEvent } from '../../src/domain/session/event.ts';
import { ms } from '../../src/domain/units.ts';
import { blankSheet } from '../../src/domain/workshop/blank.ts';
import { type Journey, journey, seconds } from '../drivers/browser/journey.ts';
import { ROOT } from '../drivers/tree.ts';

let script = '';

beforeAll(async () => {
  const result = await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      rolldownOptions: {
        input: `${ROOT}tests/drivers/browser/store-in-page.ts`,
        output: { format: 'iife' },
      },
    },
  });
  const [first] = Array.isArray(result) ? result : [result];
  if (first === undefined || !('output' in first)) throw new Error('nothing was built');
  script = first.output[0].code;
});

/** A page with the store alone, over the browser's own IndexedDB. */
async function withStore({ site }: Journey, page: Page): Promise<Page> {
  site.replace('/store.js', script);
  site.replace(
    '/store.html',
    '<!doctype html><link rel="icon" href="data:,"><script src="store.js"></script>',
  );
  await page.goto(`${site.url}store.html`);
  return page;
}

const DONE = { ok: true, value: undefined };
const sheetOf = (tab: string, mark: string): StoredSheet => ({
  format: 'towpath-sheet/1',
  key: 'sheet-a',
  sheet: { ...blankSheet('marsh-a', 'en'), title: `Marsh ${mark}`, kept: { wind: null } },
  changedAt: 5,
  tab,
  mark,
});

const tick = (at: number): SessionEvent => ({ type: 'tick', wall: at, track: ms(at) });

journey('REAL-21 what was written is there after a kill, in its order', async (j) => {
  const page = await withStore(j, j.page);
  const events = Array.from({ length: 40 }, (_, index) => tick(index * 100));
  await page.evaluate(async (all) => {
    const { store } = window;
    await store.load();
    await store.putProgramme({ id: 'a', text: '{"x": "é"}', cameAt: 5 });
    await store.putChoice('a', 'wren');
    await store.takeLease({ session: 's', tab: 't', beatAt: 1 }, false);
    for (const event of all) await store.append('s', 't', [event], true);
  }, events);
  await j.kill();
  const again = await withStore(j, await j.restart());
  const read = await again.evaluate(() => window.store.load());
  expect(read).toMatchObject({
    ok: true,
    value: {
      programmes: [{ id: 'a', text: '{"x": "é"}', cameAt: 5 }],
      choices: { a: 'wren' },
      journals: [{ session: 's', events }],
    },
  });
});

journey(
  'REAL-21 a session that is closed leaves its entry and nothing else, whatever comes after',
  async (j) => {
    const page = await withStore(j, j.page);
    const closed = await page.evaluate(async () => {
      const { store } = window;
      await store.load();
      await store.takeLease({ session: 's', tab: 't', beatAt: 1 }, false);
      await store.append('s', 't', [{ type: 'tick', wall: 1, track: 1 as never }], true);
      return store.closeSession('s', 't', { id: 's', note: 'kept' } as never);
    });
    expect(closed).toEqual({ ok: true, value: undefined });
    await j.kill();
    const again = await withStore(j, await j.restart());
    const [read, lease] = await again.evaluate(async () => [
      await window.store.load(),
      await window.store.lease(),
    ]);
    expect(read).toMatchObject({
      ok: true,
      value: { log: [{ id: 's', note: 'kept' }], journals: [] },
    });
    expect(lease).toEqual({ ok: true, value: undefined });
  },
);

journey(
  'REAL-21 of two tabs that ask at once, one gets the session, and the other cannot write to it',
  async (j) => {
    const one = await withStore(j, j.page);
    const two = await withStore(j, await j.newTab());
    await Promise.all([one, two].map((page) => page.evaluate(() => window.store.load())));
    const now = Date.now();
    const [first, second] = await Promise.all(
      [one, two].map((page, index) =>
        page.evaluate(
          ([tab, at]) =>
            window.store.takeLease({ session: 's', tab: `${tab}`, beatAt: at as number }, false),
          [`tab-${index}`, now] as const,
        ),
      ),
    );
    expect([first, second].filter((each) => each?.ok && each.value)).toHaveLength(1);
    const loser = first?.ok && first.value ? two : one;
    const tab = loser === one ? 'tab-0' : 'tab-1';
    const refused = await loser.evaluate(
      (name) =>
        window.store.append('s', name, [{ type: 'tick', wall: 1, track: 1 as never }], true),
      tab,
    );
    expect(refused).toMatchObject({ ok: false, error: { code: 'not-ours' } });
  },
);

journey(
  'REAL-21 a programme in writing is there after a kill, as it was last written',
  async (j) => {
    const page = await withStore(j, j.page);
    const results = await page.evaluate(
      async ([first, last]) => [
        await window.sheets.putSheet(first, undefined),
        await window.sheets.putSheet(last, first.mark),
      ],
      [sheetOf('one', 'a'), sheetOf('one', 'b')] as const,
    );
    expect(results).toEqual([DONE, DONE]);
    await j.kill();
    const again = await withStore(j, await j.restart());
    const [sheets, everything] = await again.evaluate(async () => [
      await window.sheets.sheets(),
      await window.everything(),
    ]);
    expect(sheets).toEqual({ ok: true, value: [sheetOf('one', 'b')] });
    expect(everything).toMatchObject({ sheets: [sheetOf('one', 'b')] });
  },
);

journey(
  'REAL-21 what others told is there after a kill, and whoever was taken out is gone',
  async (j) => {
    const page = await withStore(j, j.page);
    const [rosa, tamsin] = ['7f', '3c'].map((part) => nobody('marsh-a', part.repeat(16)));
    if (rosa === undefined || tamsin === undefined) throw new Error('nobody is there');
    const told = { ...rosa, known: { at: 5, name: 'Rosa' } };
    const changed = await page.evaluate(
      async ([first, second, next]) => {
        await window.boards.change(() => ({ heard: [first, second] }));
        return window.boards.change(() => ({ heard: [next], gone: { heard: [second.key] } }));
      },
      [rosa, tamsin, told] as const,
    );
    expect(changed).toMatchObject({ ok: true });
    await j.kill();
    const again = await withStore(j, await j.restart());
    const [boards, everything] = await again.evaluate(async () => [
      await window.boards.boards(),
      await window.everything(),
    ]);
    expect(boards).toEqual({ ok: true, value: { heard: [told], days: [], setups: [] } });
    expect(JSON.stringify(everything)).not.toContain(tamsin.person);
  },
);

journey(
  'REAL-21 of two tabs that write one programme at once, the one that had not read the other is refused',
  async (j) => {
    const one = await withStore(j, j.page);
    const two = await withStore(j, await j.newTab());
    await one.evaluate((sheet) => window.sheets.putSheet(sheet, undefined), sheetOf('one', 'a'));
    const results = await Promise.all(
      [
        { page: one, sheet: sheetOf('two', 'b') },
        { page: two, sheet: sheetOf('three', 'c') },
      ].map(({ page, sheet }) => page.evaluate((each) => window.sheets.putSheet(each, 'a'), sheet)),
    );
    expect(results.filter(({ ok }) => ok)).toHaveLength(1);
    const refused = results.find(({ ok }) => !ok);
    expect(refused).toMatchObject({ ok: false, error: { code: 'not-ours' } });
    expect(await one.evaluate(() => window.sheets.sheets())).toMatchObject({
      ok: true,
      value: [{ mark: results[0]?.ok ? 'b' : 'c' }],
    });
  },
);

journey('REAL-21 data of a newer version can be read and is never written over', async (j) => {
  const page = await withStore(j, j.page);
  await page.evaluate(async () => {
    await window.store.load();
    await window.store.putChoice('a', 'wren');
    const [{ version = 1 } = {}] = await indexedDB.databases();
    await new Promise<void>((resolve, reject) => {
      const open = indexedDB.open('towpath', version + 1);
      open.onsuccess = () => {
        open.result.close();
        resolve();
      };
      open.onerror = () => reject(open.error);
    });
  });
  await page.reload();
  const [read, written] = await page.evaluate(async () => [
    await window.store.load(),
    await window.store.putChoice('a', 'curlew'),
  ]);
  expect(read).toMatchObject({ ok: true, value: { choices: { a: 'wren' } } });
  expect(written).toMatchObject({ ok: false, error: { code: 'newer' } });
});

journey('REAL-21 a connection that was taken away is opened anew', async (j) => {
  const page = await withStore(j, j.page);
  const after = await page.evaluate(async () => {
    await window.store.load();
    await window.store.putChoice('a', 'wren');
    // The store gives way to a deletion, as it does to a newer tab; then it is asked again.
    await new Promise<void>((resolve) => {
      indexedDB.deleteDatabase('towpath').onsuccess = () => resolve();
    });
    const put = await window.store.putChoice('b', 'wren');
    const read = await window.store.load();
    return [put, read] as const;
  });
  expect(after[0]).toEqual({ ok: true, value: undefined });
  expect(after[1]).toMatchObject({ ok: true, value: { choices: { b: 'wren' } } });
});

journey(
  'REAL-21 a full storage is told as full, and writing works again when there is room',
  async (j) => {
    const page = await withStore(j, j.page);
    await page.evaluate(() => window.store.load());
    const { origin } = new URL(j.site.url);
    const session = await j.browser.context.newCDPSession(page);
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    // The browser believes for half a minute in the room that it saw last.
    await seconds(32);
    const full = await page.evaluate(() =>
      window.store.putProgramme({ id: 'a', text: 'x'.repeat(200_000), cameAt: 1 }),
    );
    expect(full).toMatchObject({ ok: false, error: { code: 'full' } });
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    const put = await page.evaluate(() =>
      window.store.putProgramme({ id: 'a', text: 'x'.repeat(200_000), cameAt: 1 }),
    );
    expect(put).toEqual({ ok: true, value: undefined });
  },
  { expected: /quota/i },
);
