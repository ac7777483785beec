import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { common } from '../../src/copy/common.ts';
import { unfinished } from '../../src/copy/unfinished.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { button, go, heard, SEVERAL, startOn } from '../drivers/browser/visit.ts';

journey(
  'REAL-11 while one tab runs a session, another is refused and disturbs nothing',
  async (j) => {
    await startOn(j.page, j.site, SEVERAL);
    await seconds(2);
    const first = await heard(j.page);

    const second = await j.newTab();
    await second.goto(j.site.url);
    await go(second, '/p/marsh-mile/1/1');
    await second.getByText(before.elsewhere).waitFor();
    expect(await button(second, before.start).count()).toBe(0);
    expect(await second.getByText(unfinished.title).count()).toBe(0);

    await seconds(3);
    const then = await heard(j.page);
    expect(then.paused).toBe(false);
    expect(Math.abs(then.at - first.at - (then.clock - first.clock))).toBeLessThan(0.2);
  },
);

journey(
  'REAL-11 when the tab that ran it is gone, another can take the session over',
  async (j) => {
    await startOn(j.page, j.site, SEVERAL);
    await seconds(8);
    const { at } = await heard(j.page);
    const second = await j.newTab();
    await second.goto(j.site.url);
    await j.page.close();
    await second.reload();
    const offer = second.getByRole('region', { name: unfinished.title });
    await offer.waitFor();
    await offer.getByRole('button', { name: /^Go on from/ }).click();
    await seconds(2);
    const then = await heard(second);
    expect(then.paused).toBe(false);
    expect(then.at).toBeGreaterThan(at - 8);
    expect(then.at).toBeLessThan(at + 4);
  },
);

journey(
  'STORE-10 a tab of an old version that holds the database is named, and what was kept is there once it closes',
  async (j) => {
    // A page of the same origin without the app in it: it makes what version 1 made, and lets go of nothing.
    await j.page.goto(`${j.site.url}icon.svg`);
    await j.page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const asked = indexedDB.open('towpath', 1);
          asked.onerror = () => reject(asked.error);
          asked.onupgradeneeded = () => {
            const db = asked.result;
            db.createObjectStore('programmes', { keyPath: 'id' });
            const choices = db.createObjectStore('choices');
            db.createObjectStore('settings');
            const events = db.createObjectStore('journal', { autoIncrement: true });
            events.createIndex('session', 'session');
            db.createObjectStore('log', { keyPath: 'id' }).createIndex('startedAt', 'startedAt');
            db.createObjectStore('meta');
            choices.put('wren', 'heron-loop-spring');
          };
          asked.onsuccess = () => resolve();
        }),
    );
    const tab = await j.newTab();
    await tab.goto(j.site.url);
    await tab.getByRole('alert').getByText(common.unread).waitFor();
    await tab.getByText(welcome.what).waitFor();
    await j.page.close();
    // The group that was chosen in the old version leads straight to its sessions.
    await tab.waitForURL(/#\/p\/heron-loop-spring$/);
    expect(await tab.getByText(common.unread).count()).toBe(0);
  },
  // A drawing has no icon of its own.
  { expected: /404/ },
);
