import { describe, expect, it } from 'vitest';
import type { Store } from '../../src/app/ports.ts';
import { withFeeling } from '../../src/domain/log/by-hand.ts';
import type { Feeling, LogEntry } from '../../src/domain/log/entry.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { fail } from '../../src/domain/result.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import { connect } from '../../src/platform/store/connection.ts';
import { createRecordsStore } from '../../src/platform/store/records.ts';
import { HandClock, settle } from '../drivers/clock.ts';
import { asks, CHOICE, prepared, reopened, SHORT, TOTAL, view } from '../drivers/own-session.ts';
import { openTab, type Tab, type TabOptions, take } from '../drivers/phone.ts';
import { silentPack } from '../drivers/voice.ts';

async function running(
  options: TabOptions = {},
  medium: 'sound' | 'screen' = 'sound',
): Promise<Tab> {
  const tab = await prepared(options, medium);
  asks(tab).start();
  await settle();
  return tab;
}

describe('preparing', () => {
  it('PLAY-25 composes once for the same session and never starts sound', async () => {
    const tab = await prepared();
    expect(view(tab)).toMatchObject({
      state: 'ready',
      choice: CHOICE,
      groupName: 'Wren',
      target: 50,
    });
    const { loaded } = tab.sound;
    await asks(tab).prepare(CHOICE, 'sound');
    await asks(tab).prepare({ ...CHOICE }, 'sound');
    expect(tab.sound.loaded).toBe(loaded);
    expect(tab.sound.plays).toBe(0);
  });

  it('PLAY-25 waits for the voice, and is ready when it has come', async () => {
    let come = (): void => {};
    const arrived = new Promise<void>((resolve) => {
      come = resolve;
    });
    const pack = {
      load: async () => {
        await arrived;
        return { ok: true, value: silentPack() } as const;
      },
    };
    const tab = await prepared({ pack });
    expect(view(tab).state).toBe('composing');
    asks(tab).start();
    expect(view(tab).state).toBe('composing');
    come();
    await settle();
    expect(view(tab).state).toBe('ready');
  });

  it('PLAY-25 without a voice a session can be watched, and one for hearing is not ready', async () => {
    const pack = { load: async () => fail('missing' as const) };
    const tab = await prepared({ pack });
    expect(view(tab).state).toBe('composing');
    expect(tab.app.pack.getState().pack.name).toBe('missing');
    await asks(tab).prepare(CHOICE, 'screen');
    expect(view(tab)).toMatchObject({ state: 'ready', medium: 'screen' });
  });

  it('PLAY-25 how much is said can be changed until the start, and composes anew', async () => {
    const tab = await prepared();
    const { loaded } = tab.sound;
    await tab.app.settings.getState().change({ talk: 'many' });
    expect(tab.sound.loaded).toBe(loaded + 1);
    asks(tab).start();
    await tab.app.settings.getState().change({ talk: 'few' });
    expect(tab.sound.loaded).toBe(loaded + 1);
  });

  it('PLAY-25 while a session is under way no other is prepared, and updates wait', async () => {
    const tab = await running();
    const { loaded } = tab.sound;
    await asks(tab).prepare({ ...CHOICE, session: 2 }, 'sound');
    await asks(tab).preparePocketCheck();
    asks(tab).playCueNow();
    asks(tab).close();
    expect(view(tab)).toMatchObject({ state: 'running', choice: CHOICE });
    expect(tab.sound.loaded).toBe(loaded);
    await tab.clock.pass(TOTAL + 1);
    expect(tab.seen.busy).toEqual([true, false]);
  });

  it('PLAY-25 a cue can be heard before the session, which then starts from its own track', async () => {
    const tab = await prepared();
    const track = tab.sound.bytes?.length;
    asks(tab).playCueNow();
    expect(tab.sound.playing).toBe(true);
    expect(tab.sound.bytes?.length).not.toBe(track);
    await tab.clock.pass(20);
    expect(tab.sound.playing).toBe(false);
    expect(view(tab).state).toBe('ready');
    asks(tab).start();
    expect(tab.sound.bytes?.length).toBe(track);
    expect(tab.sound.playing).toBe(true);
    await tab.clock.pass(2);
    expect(view(tab).position).toBe(2000);
  });
});

describe('what a screen is told', () => {
  it('PLAY-22 says all of it while running', async () => {
    const tab = await running();
    await tab.clock.pass(70);
    expect(view(tab)).toMatchObject({
      state: 'running',
      lane: 'session',
      position: 70_000,
      left: 20_000,
      segment: { activity: 'run', set: { n: 1, of: 3 } },
      next: { activity: 'walk' },
      offers: { hold: true, walkNow: true, oneMore: false, skip: true, coolDown: 'jump' },
    });
    expect(view(tab).caption).not.toBe('');
  });

  it('PLAY-22 a recovery offers one minute more, and tells what is left of it', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    expect(view(tab).offers).toMatchObject({ oneMore: true, walkNow: false });
    asks(tab).oneMore();
    await tab.clock.pass(10);
    expect(view(tab)).toMatchObject({ lane: 'one-more', left: 50_000, position: 100_000 });
    expect(view(tab).caption).toMatch(/One minute more/);
  });

  it('PLAY-22 a hold tells where it goes on, and what the holding lane says', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    asks(tab).hold();
    await tab.clock.pass(5);
    expect(view(tab)).toMatchObject({ state: 'holding', lane: 'holding', position: 100_000 });
    expect(view(tab).offers).toMatchObject({ hold: false, goOn: true, skip: false });
    expect(view(tab).caption).toMatch(/Holding/);
  });

  it('PLAY-22 a skip offers its undo for ten seconds', async () => {
    const tab = await running();
    await tab.clock.pass(70);
    asks(tab).skip();
    expect(view(tab).offers.undo).toBe('skip');
    await tab.clock.pass(9);
    expect(view(tab).offers.undo).toBe('skip');
    await tab.clock.pass(2);
    expect(view(tab).offers.undo).toBeNull();
  });

  it('PLAY-14 who comes back to an interrupted session is told since when it has been silent', async () => {
    const tab = await running();
    await tab.clock.pass(70);
    tab.sound.take();
    expect(view(tab)).toMatchObject({ state: 'interrupted' });
    expect(view(tab).gap).toBeUndefined();
    await tab.clock.pass(100);
    expect(view(tab).gap).toBeUndefined();
    tab.sound.say('woke');
    expect(view(tab).gap).toMatchObject({ position: 70_000 });
    asks(tab).afterGap('go-on');
    expect(view(tab)).toMatchObject({ state: 'running', position: 67_000 });
    expect(view(tab).gap).toBeUndefined();
    expect(tab.sound.playing).toBe(true);
  });

  it('PLAY-27 a sound that has not begun after a second and a half is said to be late, until it has', async () => {
    const tab = await prepared();
    tab.sound.stick(true);
    asks(tab).start();
    await settle();
    await tab.clock.pass(1);
    expect(view(tab).late).toBeUndefined();
    await tab.clock.pass(1);
    expect(view(tab)).toMatchObject({ state: 'running', late: true });
    tab.sound.stick(false);
    await tab.clock.pass(1);
    expect(view(tab).late).toBeUndefined();
    expect(view(tab).gap).toBeUndefined();
  });

  it('PLAY-24 changes about once a second, and while hidden once a segment', async () => {
    const tab = await running();
    let changes = 0;
    tab.app.session.subscribe((now, before) => {
      if (now.view !== before.view) changes++;
    });
    await tab.clock.pass(50);
    expect(changes).toBeGreaterThanOrEqual(49);
    expect(changes).toBeLessThanOrEqual(60);
    changes = 0;
    tab.sound.say('hidden');
    await tab.clock.pass(200);
    expect(changes).toBeLessThanOrEqual(8);
    tab.sound.say('woke');
    expect(view(tab).position).toBe(250_000);
  });

  it('PLAY-22 the lock screen has one title for each segment, with what comes next', async () => {
    const tab = await running();
    await tab.clock.pass(TOTAL + 1);
    const titles = tab.seen.titles.map(({ title, artist }) => `${title} / ${artist}`);
    expect(titles).toEqual([
      'EASY WALK 1:00 / then RUN 0:30',
      'RUN 0:30 · set 1 of 3 / then WALK 1:00',
      'WALK 1:00 · set 1 of 3 / then RUN 0:30',
      'RUN 0:30 · set 2 of 3 / then WALK 1:00',
      'WALK 1:00 · set 2 of 3 / then RUN 0:30',
      'RUN 0:30 · set 3 of 3 / then WALK 1:00',
      'WALK 1:00 · set 3 of 3 / then EASY WALK 1:00',
      'EASY WALK 1:00 / then the end',
      'DONE / ',
    ]);
    for (const [at, total] of tab.seen.places) {
      expect(total).toBe(TOTAL * 1000);
      expect(at).toBeLessThanOrEqual(total);
    }
  });

  it('PLAY-19 boundaries vibrate when that is wanted', async () => {
    const tab = await running();
    await tab.clock.pass(61);
    expect(tab.seen.vibrations).toEqual(['harder']);
    await tab.app.settings.getState().change({ vibration: false });
    await tab.clock.pass(60);
    expect(tab.seen.vibrations).toEqual(['harder']);
  });

  it('PLAY-20 a heard session that is watched keeps the screen on too, until its end', async () => {
    const tab = await running();
    expect(tab.seen.awake).toEqual([]);
    asks(tab).watch(true);
    expect(tab.seen.awake.at(-1)).toBe(true);
    asks(tab).watch(false);
    expect(tab.seen.awake.at(-1)).toBe(false);
    asks(tab).watch(true);
    await tab.clock.pass(TOTAL + 1);
    expect(tab.seen.awake.at(-1)).toBe(false);
  });

  it('PLAY-20 a watched session runs without sound and lets the screen go at its end', async () => {
    const tab = await running({}, 'screen');
    await tab.clock.pass(TOTAL + 1);
    expect(view(tab)).toMatchObject({ state: 'finished', medium: 'screen' });
    expect(tab.sound.plays).toBe(0);
    expect(tab.seen.awake[0]).toBe(true);
    expect(tab.seen.awake.at(-1)).toBe(false);
    expect(tab.app.log.getState().entries[0]).toMatchObject({ doneSeconds: TOTAL });
  });
});

/** How it felt, as the screen writes it. */
async function say(tab: Tab, id: string, feeling: Feeling): Promise<void> {
  const { entries, write } = tab.app.log.getState();
  const entry = entries.find((each) => each.id === id);
  if (entry === undefined) throw new Error('no such entry');
  await write(withFeeling(entry, feeling, undefined, tab.clock.now()));
}

describe('the log', () => {
  it('LOG-4 how it felt is kept with the entry', async () => {
    const tab = await running();
    await tab.clock.pass(TOTAL + 1);
    const id = asks(tab).entryId ?? '';
    await say(tab, id, { effort: 6, note: 'Wind' });
    await settle();
    asks(tab).close();
    expect(view(tab).state).toBe('idle');
    const again = await reopened(tab);
    expect(again.app.log.getState().entries).toMatchObject([
      { id, outcome: 'finished', doneSeconds: TOTAL, feeling: { effort: 6, note: 'Wind' } },
    ]);
  });

  it('LOG-2 an entry keeps the date of the place where it started, and the newest is first', async () => {
    const tab = await running();
    await tab.clock.pass(TOTAL + 1);
    asks(tab).close();
    await asks(tab).prepare(CHOICE, 'sound');
    asks(tab).start();
    await tab.clock.pass(30);
    asks(tab).end();
    await settle();
    const { entries } = tab.app.log.getState();
    expect(entries.map(({ outcome }) => outcome)).toEqual(['ended-early', 'finished']);
    expect(entries[0]).toMatchObject({
      offsetMinutes: 60,
      zone: 'Europe/Paris',
      localDate: '2027-03-07',
      doneSeconds: 30,
    });
  });
});

describe('a phone that dies', () => {
  it('JRNL-5 within half an hour the session is offered to be gone on with, five seconds lost at most', async () => {
    for (const at of [2, 9, 67.3, 133]) {
      const tab = await running();
      await tab.clock.pass(at);
      tab.kill();
      await tab.clock.pass(600);
      const again = await reopened(tab);
      const { unfinished } = asks(again);
      expect(unfinished).toMatchObject({ offer: 'go-on', choice: CHOICE, total: TOTAL * 1000 });
      expect(at * 1000 - (unfinished?.position ?? 0)).toBeLessThanOrEqual(5250);
      await asks(again).recover('go-on');
      expect(view(again).state).toBe('running');
      expect(again.sound.playing).toBe(true);
      expect(asks(again).unfinished).toBeUndefined();
      await again.clock.pass(TOTAL);
      expect(view(again).state).toBe('finished');
      const [entry] = again.app.log.getState().entries;
      expect(entry?.doneSeconds).toBeGreaterThanOrEqual(TOTAL - 6);
      expect(entry?.doneSeconds).toBeLessThanOrEqual(TOTAL);
    }
  });

  it('JRNL-9 a killed session is silent until a person goes on', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    tab.kill();
    const again = await reopened(tab);
    await again.clock.pass(30);
    expect(again.sound.plays).toBe(0);
    expect(again.app.log.getState().entries).toEqual([]);
  });

  it('JRNL-5 within six hours keeping is offered, and what was done is kept', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    tab.kill();
    tab.clock.sleep(3600);
    const again = await reopened(tab);
    expect(asks(again).unfinished).toMatchObject({ offer: 'keep' });
    await asks(again).recover('keep');
    await settle();
    expect(asks(again).unfinished).toBeUndefined();
    expect(again.app.log.getState().entries).toMatchObject([{ outcome: 'ended-early' }]);
    const stored = await again.store.load();
    expect(stored.ok && stored.value.journals).toEqual([]);
  });

  it('JRNL-5 later it is saved as ended early by itself', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    tab.kill();
    tab.clock.sleep(7 * 3600);
    const again = await reopened(tab);
    expect(asks(again).unfinished).toBeUndefined();
    const [entry] = again.app.log.getState().entries;
    expect(entry).toMatchObject({ outcome: 'ended-early' });
    expect(entry?.doneSeconds).toBeGreaterThanOrEqual(95);
  });

  it('JRNL-6 killed in its last ten seconds with the end passed by the clock, it was finished', async () => {
    const tab = await running();
    await tab.clock.pass(TOTAL - 4);
    tab.kill();
    await tab.clock.pass(60);
    const again = await reopened(tab);
    expect(asks(again).unfinished).toBeUndefined();
    expect(again.app.log.getState().entries).toMatchObject([{ outcome: 'finished' }]);
  });

  it('JRNL-7 killed at any moment around its end, a finished session is there exactly once', async () => {
    for (const after of [0, 0.25, 1, 30]) {
      const tab = await running();
      await tab.clock.pass(TOTAL + after);
      tab.kill();
      await tab.clock.pass(20);
      const again = await reopened(tab);
      await settle();
      expect(again.app.log.getState().entries).toMatchObject([{ outcome: 'finished' }]);
      const stored = await again.store.load();
      expect(stored.ok && stored.value.log).toHaveLength(1);
      expect(stored.ok && stored.value.journals).toEqual([]);
    }
  });

  it('JRNL-9 with the voice still on its way, going on waits for it', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    tab.kill();
    let come = (): void => {};
    const arrived = new Promise<void>((resolve) => {
      come = resolve;
    });
    const pack = {
      load: async () => {
        await arrived;
        return { ok: true, value: silentPack() } as const;
      },
    };
    const again = await reopened(tab, { pack });
    const going = asks(again).recover('go-on');
    await settle();
    expect(again.sound.plays).toBe(0);
    expect(asks(again).unfinished).toBeDefined();
    come();
    await going;
    expect(view(again)).toMatchObject({ state: 'running', medium: 'sound' });
  });

  it('JRNL-9 without a voice the rest can be watched', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    tab.kill();
    const again = await reopened(tab, { pack: { load: async () => fail('damaged' as const) } });
    await asks(again).recover('go-on');
    expect(view(again)).toMatchObject({ state: 'running', medium: 'screen' });
    await again.clock.pass(TOTAL);
    expect(view(again).state).toBe('finished');
  });

  it('JRNL-8 a session that keeps an older one goes on giving signs of life', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    tab.kill();
    const again = await reopened(tab);
    await asks(again).prepare(CHOICE, 'sound');
    asks(again).start();
    await again.clock.pass(60);
    const lease = await again.store.lease();
    const age = lease.ok && lease.value ? again.clock.now() - lease.value.beatAt : Infinity;
    expect(age).toBeLessThanOrEqual(5000);
  });

  it('JRNL-5 a new session keeps what an unanswered one had done', async () => {
    const tab = await running();
    await tab.clock.pass(100);
    tab.kill();
    const again = await reopened(tab);
    await asks(again).prepare(CHOICE, 'sound');
    asks(again).start();
    await settle();
    await again.clock.pass(TOTAL + 1);
    expect(asks(again).entryId).toBe(again.app.log.getState().entries[0]?.id);
    const outcomes = again.app.log.getState().entries.map(({ outcome }) => outcome);
    expect(outcomes).toEqual(['finished', 'ended-early']);
  });
});

describe('two tabs', () => {
  it('JRNL-8 a second tab is refused while the first lives, and learns when it is done', async () => {
    const first = await running();
    await first.clock.pass(20);
    const second = await openTab({ database: first.database, clock: first.clock });
    expect(asks(second).unfinished).toBeUndefined();
    await asks(second).prepare(CHOICE, 'sound');
    expect(view(second).busyElsewhere).toBe(true);
    asks(second).start();
    await settle();
    expect(second.sound.plays).toBe(0);
    await first.clock.pass(TOTAL);
    expect(view(first).state).toBe('finished');
    await first.clock.pass(6);
    expect(view(second).busyElsewhere).toBe(false);
    expect(second.app.log.getState().entries).toHaveLength(1);
  });

  it('JRNL-8 two tabs that start at the same moment: one runs, the other falls silent', async () => {
    const first = await prepared();
    const second = await openTab({ database: first.database, clock: first.clock });
    await asks(second).prepare(CHOICE, 'sound');
    asks(first).start();
    asks(second).start();
    await first.clock.pass(10);
    const states = [view(first), view(second)];
    expect(states.filter(({ state }) => state === 'running')).toHaveLength(1);
    expect(states.filter(({ busyElsewhere }) => busyElsewhere)).toHaveLength(1);
    expect([first, second].filter(({ sound }) => sound.playing)).toHaveLength(1);
  });

  it('JRNL-8 without a sign of life for 30 s another tab may take over, and the first gives up', async () => {
    const first = await running();
    await first.clock.pass(20);
    first.sound.clock.sleep(31);
    const second = await openTab({ database: first.database, clock: first.clock });
    expect(asks(second).unfinished).toMatchObject({ offer: 'go-on' });
    await asks(second).recover('go-on');
    await settle();
    expect(view(second).state).toBe('running');
    await first.clock.pass(6);
    expect(view(first).busyElsewhere).toBe(true);
    expect(first.sound.playing).toBe(false);
    await first.clock.pass(TOTAL);
    const stored = await second.store.load();
    expect(stored.ok && stored.value.log).toHaveLength(1);
  });

  it('JRNL-8 where a tab cannot be known to be gone, its session is offered after half a minute', async () => {
    const first = await running();
    await first.clock.pass(20);
    first.kill();
    const second = await openTab({ database: first.database, clock: first.clock });
    expect(asks(second).unfinished).toBeUndefined();
    expect(view(second).busyElsewhere).toBe(true);
    await second.clock.pass(36);
    expect(asks(second).unfinished).toMatchObject({ offer: 'go-on' });
    expect(view(second).busyElsewhere).toBe(false);
  });
});

describe('storage that fails', () => {
  it('JRNL-4 the session goes on from memory, says so, and is written in order when it can be', async () => {
    let full = false;
    const trouble = fail({ code: 'full', detail: '' } as const);
    const store = (real: Store): Store => ({
      ...real,
      append: async (...args) => (full ? trouble : real.append(...args)),
      closeSession: async (...args) => (full ? trouble : real.closeSession(...args)),
    });
    const tab = await running({ store });
    await tab.clock.pass(20);
    expect(view(tab).unsaved).toBe(false);
    full = true;
    asks(tab).hold();
    await tab.clock.pass(1);
    expect(view(tab)).toMatchObject({ state: 'holding', unsaved: true });
    asks(tab).goOn();
    await tab.clock.pass(60);
    expect(view(tab)).toMatchObject({ state: 'running', unsaved: true });
    full = false;
    await tab.clock.pass(6);
    expect(view(tab).unsaved).toBe(false);
    tab.kill();
    const again = await reopened(tab);
    expect(asks(again).unfinished?.position).toBeGreaterThanOrEqual(77_000);
  });

  it('JRNL-4 a session that ends while nothing can be written is written afterwards', async () => {
    let full = false;
    const trouble = fail({ code: 'full', detail: '' } as const);
    const store = (real: Store): Store => ({
      ...real,
      append: async (...args) => (full ? trouble : real.append(...args)),
      closeSession: async (...args) => (full ? trouble : real.closeSession(...args)),
    });
    const tab = await running({ store });
    full = true;
    await tab.clock.pass(TOTAL + 1);
    expect(view(tab)).toMatchObject({ state: 'finished', unsaved: true });
    expect(tab.app.log.getState().entries).toHaveLength(1);
    full = false;
    await tab.clock.pass(10);
    // Everything that waited is written one by one.
    for (let turn = 0; turn < 100 && view(tab).unsaved; turn++) await settle();
    expect(view(tab).unsaved).toBe(false);
    const stored = await tab.store.load();
    expect(stored.ok && stored.value.log).toHaveLength(1);
    expect(stored.ok && stored.value.journals).toEqual([]);
  });

  it('JRNL-4 without any storage a session runs to its end', async () => {
    const trouble = fail({ code: 'lost', detail: '' } as const);
    const lost = async () => trouble;
    const store = (real: Store): Store => ({
      ...real,
      load: lost,
      journals: lost,
      append: lost,
      closeSession: lost,
      lease: lost,
      takeLease: lost,
      beat: lost,
      putProgramme: lost,
      putEntry: lost,
    });
    const tab = await running({ store });
    await tab.clock.pass(TOTAL + 1);
    expect(view(tab)).toMatchObject({ state: 'finished', unsaved: true });
  });

  it('JRNL-4 an answer that cannot be written is told, kept, and written when it can be', async () => {
    let full = false;
    const store = (real: Store): Store => ({
      ...real,
      putEntry: async (entry) =>
        full ? fail({ code: 'full', detail: '' } as const) : real.putEntry(entry),
    });
    const tab = await running({ store });
    await tab.clock.pass(TOTAL + 1);
    full = true;
    const id = asks(tab).entryId ?? '';
    await say(tab, id, { effort: 4 });
    await settle();
    expect(tab.app.log.getState()).toMatchObject({
      unsaved: true,
      entries: [{ feeling: { effort: 4 } }],
    });
    full = false;
    await tab.clock.pass(6);
    expect(tab.app.log.getState().unsaved).toBe(false);
    const stored = await tab.store.load();
    expect(stored.ok && stored.value.log).toMatchObject([{ feeling: { effort: 4 } }]);
  });

  it('LOG-3 an entry of a newer format is not shown, not changed, and exported', async () => {
    const tab = await running();
    await tab.clock.pass(TOTAL + 1);
    const [entry] = tab.app.log.getState().entries;
    const newer = { ...entry, id: 'newer', format: 'towpath-log/99', heart: 'new' };
    await tab.store.putEntry(newer as unknown as LogEntry);
    const again = await reopened(tab);
    expect(again.app.log.getState().entries.map(({ id }) => id)).toEqual([entry?.id]);
    const all = await createRecordsStore(connect(tab.database)).everything();
    expect(all.ok && all.value.log).toContainEqual(['newer', newer]);
  });

  it('STORE-5 settings changed before the stored ones came do not wipe them', async () => {
    const first = await openTab();
    await first.app.settings
      .getState()
      .change({ appearance: 'dark', cautionsReadOn: '2027-03-01' });
    await settle();
    let broken = true;
    const store = (real: Store): Store => ({
      ...real,
      load: async () => (broken ? fail({ code: 'lost', detail: '' }) : real.load()),
    });
    const again = await reopened(first, { store });
    await again.app.settings.getState().change({ talk: 'few' });
    broken = false;
    await again.clock.pass(6);
    const expected = { appearance: 'dark', cautionsReadOn: '2027-03-01', talk: 'few' };
    expect(again.app.settings.getState().settings).toMatchObject(expected);
    const stored = await again.store.load();
    expect(stored.ok && stored.value.settings).toMatchObject(expected);
  });
});

describe('the pocket check', () => {
  it('PLAY-23 tells what the phone did, and is no session of the log', async () => {
    const tab = await openTab();
    await asks(tab).preparePocketCheck();
    expect(view(tab)).toMatchObject({ state: 'ready', purpose: 'pocket-check' });
    asks(tab).start();
    await tab.clock.pass(5);
    tab.sound.say('hidden');
    await tab.clock.pass(100);
    tab.sound.say('woke');
    await tab.clock.pass(20);
    expect(view(tab).state).toBe('finished');
    expect(tab.app.settings.getState().settings.pocketCheck).toMatchObject({
      heardToEnd: true,
      hiddenMs: 100_000,
      installed: true,
      events: expect.arrayContaining(['5.0 hidden', '105.0 woke']),
    });
    const record = tab.app.settings.getState().settings.pocketCheck;
    expect(record?.longestSilenceMs).toBeLessThan(1000);
    expect(tab.app.log.getState().entries).toEqual([]);
    const stored = await tab.store.load();
    expect(stored.ok && stored.value.journals).toEqual([]);
  });

  it('PLAY-23 tells how long the sound was away', async () => {
    const tab = await openTab();
    await asks(tab).preparePocketCheck();
    asks(tab).start();
    await tab.clock.pass(30);
    tab.sound.take();
    await tab.clock.pass(40);
    asks(tab).goOn();
    await tab.clock.pass(100);
    expect(view(tab).state).toBe('finished');
    const record = tab.app.settings.getState().settings.pocketCheck;
    expect(record?.longestSilenceMs).toBeGreaterThanOrEqual(39_000);
    expect(record?.longestSilenceMs).toBeLessThanOrEqual(44_000);
  });

  it('PLAY-23 one that a person breaks off says nothing; one that fell silent says so', async () => {
    const tab = await openTab();
    await asks(tab).preparePocketCheck();
    asks(tab).start();
    await tab.clock.pass(30);
    asks(tab).end();
    expect(tab.app.settings.getState().settings.pocketCheck).toBeUndefined();
    asks(tab).close();
    await asks(tab).preparePocketCheck();
    asks(tab).start();
    await tab.clock.pass(30);
    tab.sound.take();
    await tab.clock.pass(60);
    asks(tab).end();
    expect(tab.app.settings.getState().settings.pocketCheck).toMatchObject({ heardToEnd: false });
  });
});

describe('saving a session as files', () => {
  it('PLAY-26 gives sound and captions of one name, without a session being prepared', async () => {
    const tab = await openTab();
    await take(tab.app, SHORT);
    await settle();
    await tab.app.exporter.track(CHOICE, 'mp3');
    await tab.app.exporter.track(CHOICE, 'vtt');
    expect(tab.seen.files.map(({ name, type }) => `${name} ${type}`)).toEqual([
      'marsh-mile-w1-wren-1.mp3 audio/mpeg',
      'marsh-mile-w1-wren-1.vtt text/vtt',
    ]);
    // 390 s and two minutes of quiet at 4 kB a second.
    expect(tab.seen.files[0]?.size).toBeGreaterThan(510 * 4000 - 1000);
    expect(view(tab).state).toBe('idle');
  });

  it('HEAR-9 a session in writing is heard from cue to cue and saved whole, of no programme here', async () => {
    const tab = await openTab();
    await settle();
    const plan = parsePlan('5 min easy walk; 5 min run; 5 min easy walk');
    if (!plan.ok) throw new Error(plan.error.code);
    const timeline = layOut(plan.value);
    const piece = { timeline, reminders: [], target: 50, fileName: 'in writing: "wren"/1' };
    const { stops, sound } = await tab.app.exporter.hear(piece, 'few');
    expect(stops.map(({ session }) => session / 60_000)).toEqual([0, 0.2, 5, 10, 15]);
    // At 4 kB a second, the whole is 15 min and two minutes of quiet.
    expect(sound?.length ?? 0).toBeLessThan(60 * 4000);
    await tab.app.exporter.save(piece, 'few', 'mp3');
    expect(tab.seen.files.map(({ name }) => name)).toEqual(['in_writing_wren_1.mp3']);
    expect(tab.seen.files[0]?.size).toBeGreaterThan(17 * 60 * 4000 - 1000);
    expect(view(tab).state).toBe('idle');
  });
});

describe('the clock in tests', () => {
  it('PLAY-18 stands still until it is turned', async () => {
    const clock = new HandClock();
    const before = clock.now();
    await settle();
    expect(clock.now()).toBe(before);
  });
});
