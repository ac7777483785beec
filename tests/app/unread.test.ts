import { describe, expect, it } from 'vitest';
import type { Store } from '../../src/app/ports.ts';
import { fail } from '../../src/domain/result.ts';
import { followed } from '../domain/advice/people.ts';
import { settle } from '../drivers/clock.ts';
import { MARSH_MILE } from '../drivers/marsh-mile.ts';
import { openTab, type Tab, take } from '../drivers/phone.ts';
import { entry } from '../drivers/records/entries.ts';

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

  it('STORE-10 what is done meanwhile is kept beside what was there, in every store', async () => {
    const before = await openTab();
    await take(before.app, MARSH_MILE);
    await before.app.settings.getState().change({ talk: 'few' });
    const programmeId = 'heron-loop-spring';
    const holiday = { from: '2027-03-08', to: '2027-03-14', why: 'holiday' } as const;
    const chose = { on: '2027-03-02', week: 1, group: 'wren', why: 'chosen' } as const;
    const following = { ...followed({ pauses: [holiday], decisions: [chose] }), programmeId };
    await before.app.following.getState().change(following);
    await before.app.log.getState().write(entry({ id: 'first' }));
    await settle();
    before.kill();

    const options = { database: before.database, clock: before.clock };
    const tab = await openTab({ ...options, store: unreadable(1) });
    expect(tab.app.following.getState().following).toEqual({});
    await tab.app.programmes.getState().chooseGroup(programmeId, 'curlew');
    await tab.app.settings.getState().change({ vibration: false });
    const cold = { from: '2027-03-22', to: '2027-03-24', why: 'illness' } as const;
    const meanwhile = { ...followed({ pauses: [cold] }), programmeId };
    await tab.app.following.getState().change(meanwhile);
    await tab.app.log.getState().write(entry({ id: 'second' }));
    await tab.clock.pass(6);
    await settle();
    const both = { ...following, pauses: [holiday, cold] };
    expect(tab.app.following.getState().following[programmeId]).toEqual(both);
    // From then on a pause that is taken out stays out.
    await tab.app.following.getState().change({ ...both, pauses: [holiday] });
    await settle();
    tab.kill();

    const { app, ...again } = await openTab(options);
    expect(titles({ app, ...again })).toEqual(titles(before));
    expect(app.programmes.getState().chosen).toEqual({ [programmeId]: 'curlew' });
    expect(app.settings.getState().settings).toMatchObject({ talk: 'few', vibration: false });
    expect(app.following.getState().following[programmeId]).toEqual(following);
    const ids = app.log.getState().entries.map(({ id }) => id);
    expect(ids.toSorted()).toEqual(['first', 'second']);
  });
});
