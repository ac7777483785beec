import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import type { Following } from '../../src/domain/log/following.ts';
import { fail } from '../../src/domain/result.ts';
import { settle } from '../drivers/clock.ts';
import { openTab, type Tab } from '../drivers/phone.ts';
import { ABOUT, NINE_O_CLOCK } from '../drivers/sessions.ts';

const entry = (id: string, startedAt = NINE_O_CLOCK): LogEntry => ({
  format: 'towpath-log/2',
  id,
  programme: ABOUT.programme,
  group: ABOUT.group,
  week: 1,
  session: 1,
  plan: ABOUT.plan,
  target: 50,
  startedAt,
  offsetMinutes: 0,
  zone: 'Europe/London',
  localDate: '2027-03-07',
  outcome: 'finished',
  doneSeconds: 390,
  activeSeconds: 390,
  covered: [[0, 390]],
  feeling: {},
  how: 'by-hand',
});

const following: Following = {
  format: 'towpath-following/1',
  programmeId: 'heron-loop-spring',
  startedOn: '2027-03-08',
  pauses: [],
  decisions: [],
};

const log = (tab: Tab) => tab.app.log.getState();
const shown = (tab: Tab) => log(tab).entries.map(({ id }) => id);
const stored = async (tab: Tab) => {
  const all = await tab.store.load();
  if (!all.ok) throw new Error(all.error.detail);
  return all.value;
};
/** The same phone, opened anew. */
const again = (tab: Tab): Promise<Tab> => openTab({ database: tab.database, clock: tab.clock });

describe('the log by hand', () => {
  it('STORE-9 what is written by hand is there at once, in its place, and at the next opening', async () => {
    const tab = await openTab();
    void log(tab).write(entry('late', NINE_O_CLOCK + 9000));
    void log(tab).write(entry('early', NINE_O_CLOCK - 9000));
    void log(tab).write(entry('middle'));
    expect(shown(tab)).toEqual(['late', 'middle', 'early']);
    await settle();
    expect(shown(await again(tab))).toEqual(['late', 'middle', 'early']);
  });

  it('LOG-5 sessions of the same moment stand the same way after every opening', async () => {
    const tab = await openTab();
    for (const id of ['b', 'c', 'a']) await log(tab).write(entry(id));
    expect(shown(tab)).toEqual(['a', 'b', 'c']);
    await settle();
    expect(shown(await again(tab))).toEqual(['a', 'b', 'c']);
  });

  it('STORE-9 an entry put right is one entry, at its new place', async () => {
    const tab = await openTab();
    await log(tab).write(entry('one'));
    await log(tab).write(entry('two', NINE_O_CLOCK + 1000));
    await log(tab).write({ ...entry('one', NINE_O_CLOCK + 2000), editedAt: NINE_O_CLOCK + 5000 });
    expect(shown(tab)).toEqual(['one', 'two']);
    await settle();
    const next = await again(tab);
    expect(log(next).entries).toEqual(log(tab).entries);
  });

  it('STORE-8 a removed entry is gone at once and stays gone, and the others stay', async () => {
    const tab = await openTab();
    await log(tab).write(entry('wrong'));
    await log(tab).write(entry('right', NINE_O_CLOCK + 1000));
    await log(tab).remove('wrong');
    expect(shown(tab)).toEqual(['right']);
    await settle();
    expect((await stored(tab)).log.map(({ id }) => id)).toEqual(['right']);
    expect(shown(await again(tab))).toEqual(['right']);
  });

  it('STORE-9 while the phone is full everything waits in its order, and is told', async () => {
    let full = true;
    const tab = await openTab({
      store: (real) => ({
        ...real,
        putEntry: async (each) =>
          full ? fail({ code: 'full', detail: '' } as const) : real.putEntry(each),
      }),
    });
    await log(tab).write(entry('one'));
    await log(tab).write(entry('two'));
    await log(tab).remove('one');
    await settle();
    expect(log(tab)).toMatchObject({ unsaved: true });
    expect(shown(tab)).toEqual(['two']);
    expect((await stored(tab)).log).toEqual([]);
    full = false;
    await tab.clock.pass(6);
    expect(log(tab).unsaved).toBe(false);
    expect((await stored(tab)).log.map(({ id }) => id)).toEqual(['two']);
  });
});

describe('how a programme is gone through', () => {
  it('STORE-9 a change counts at once and is there at the next opening; the last one holds', async () => {
    const tab = await openTab();
    const state = () => tab.app.following.getState();
    expect(state()).toMatchObject({ ready: true, following: {} });
    void state().change(following);
    const paused = { ...following, pauses: [{ from: '2027-03-15', why: 'holiday' as const }] };
    void state().change(paused);
    void state().change({ ...following, programmeId: 'another' });
    expect(state().following['heron-loop-spring']).toEqual(paused);
    await settle();
    const next = await again(tab);
    expect(next.app.following.getState().following).toEqual({
      'heron-loop-spring': paused,
      another: { ...following, programmeId: 'another' },
    });
  });

  it('STORE-7 what a later version wrote is not shown, and stays as it is', async () => {
    const tab = await openTab();
    const later = { ...following, format: 'towpath-following/2', tides: true };
    await tab.store.putFollowing(later as unknown as Following);
    await tab.store.putPerson({ format: 'towpath-person/2', programmeId: 'p' } as never);
    const next = await again(tab);
    expect(next.app.following.getState().following).toEqual({});
    expect((await stored(next)).following).toEqual([later]);
    expect(await next.store.people()).toEqual({ ok: true, value: [] });
  });
});
