import { describe, expect, it } from 'vitest';
import type { Store } from '../../src/app/ports.ts';
import { fail } from '../../src/domain/result.ts';
import { settle } from '../drivers/clock.ts';
import { MARSH_MILE } from '../drivers/marsh-mile.ts';
import { openTab, type Tab, take } from '../drivers/phone.ts';

/** A phone whose database cannot be read so many times, and can then. */
const unreadable =
  (times: number) =>
  (real: Store): Store => {
    let left = times;
    return {
      ...real,
      load: async () => {
        const answer = await real.load();
        left -= 1;
        return left >= 0 ? fail({ code: 'lost', detail: 'not now' } as const) : answer;
      },
    };
  };

const titles = ({ app }: Tab) => app.programmes.getState().programmes.map(({ title }) => title);
const unread = ({ app }: Tab) => app.log.getState().unread === true;

describe('a phone whose memory cannot be read when the app is opened', () => {
  it('STORE-10 is told so, works on, and shows everything when it can be read', async () => {
    const before = await openTab();
    await take(before.app, MARSH_MILE);
    const id = before.app.programmes.getState().programmes.at(-1)?.id ?? '';
    await before.app.programmes.getState().chooseGroup(id, 'wren');
    await settle();
    const all = titles(before);
    expect(unread(before)).toBe(false);
    before.kill();

    const tab = await openTab({
      database: before.database,
      clock: before.clock,
      store: unreadable(2),
    });
    expect(unread(tab)).toBe(true);
    expect(tab.app.programmes.getState().ready).toBe(true);
    expect(titles(tab).length).toBeLessThan(all.length);
    await tab.clock.pass(6);
    expect(unread(tab)).toBe(true);
    await tab.clock.pass(6);
    await settle();
    expect(unread(tab)).toBe(false);
    expect(titles(tab)).toEqual(all);
    expect(tab.app.programmes.getState().chosen).toEqual({ [id]: 'wren' });
  });

  it('STORE-10 what is done meanwhile is kept beside what was there', async () => {
    const before = await openTab();
    await take(before.app, MARSH_MILE);
    await settle();
    before.kill();
    const options = { database: before.database, clock: before.clock };
    const tab = await openTab({ ...options, store: unreadable(1) });
    await tab.app.programmes.getState().chooseGroup('heron-loop-spring', 'curlew');
    await tab.clock.pass(6);
    await settle();
    tab.kill();
    const again = await openTab(options);
    expect(titles(again)).toEqual(titles(before));
    expect(again.app.programmes.getState().chosen).toEqual({ 'heron-loop-spring': 'curlew' });
  });
});
