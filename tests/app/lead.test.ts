import { describe, expect, it } from 'vitest';
import type { Led } from '../../src/app/session-contract.ts';
import { fail } from '../../src/domain/result.ts';
import { ms } from '../../src/domain/units.ts';
import { settle } from '../drivers/clock.ts';
import { ledWith, MARSH } from '../drivers/led.ts';
import { asks, CHOICE, reopened, view } from '../drivers/own-session.ts';
import { openTab, type Tab, type TabOptions, take } from '../drivers/phone.ts';

/** Three groups of three minutes, a minute apart. */
const LED = ledWith([0, 1, 2]);

async function prepared(
  led: Led = LED,
  options: TabOptions = {},
  medium: 'sound' | 'screen' = 'sound',
): Promise<Tab> {
  const tab = await openTab(options);
  await take(tab.app, MARSH);
  await settle();
  await asks(tab).prepare(led, medium);
  return tab;
}

async function leading(led: Led = LED, options: TabOptions = {}): Promise<Tab> {
  const tab = await prepared(led, options);
  asks(tab).start();
  await settle();
  return tab;
}

const stored = async (tab: Tab) => {
  const all = await tab.store.load();
  if (!all.ok) throw new Error(all.error.detail);
  return all.value;
};

describe('leading', () => {
  it('DAY-4 runs as one session of all groups, to the end of the last', async () => {
    const tab = await prepared();
    expect(view(tab)).toMatchObject({ state: 'ready', purpose: 'lead', lead: LED });
    expect(view(tab).choice).toBeUndefined();
    asks(tab).start();
    await tab.clock.pass(299);
    expect(view(tab)).toMatchObject({ state: 'running', position: 299_000 });
    await tab.clock.pass(2);
    expect(view(tab)).toMatchObject({ state: 'finished', lead: LED });
    expect(tab.seen.busy).toEqual([true, false]);
  });

  it('DAY-4 the same choice made again is the one that is ready, and is not composed anew', async () => {
    const tab = await prepared();
    const { loaded } = tab.sound;
    const same = ledWith([0, 1, 2]);
    await asks(tab).prepare(same, 'sound');
    expect(tab.sound.loaded).toBe(loaded);
    expect(view(tab).lead).toBe(same);
    const other = ledWith([0, 1, 3]);
    await asks(tab).prepare(other, 'sound');
    expect(tab.sound.loaded).toBe(loaded + 1);
    expect(view(tab).lead).toBe(other);
  });

  it('DAY-4 offers hold, go on and end, and nothing that moves one person alone', async () => {
    const tab = await leading();
    await tab.clock.pass(130);
    const nothing = { oneMore: false, walkNow: false, skip: false, back: false, undo: null };
    expect(view(tab).offers).toEqual({ ...nothing, hold: true, goOn: false, coolDown: null });
    asks(tab).skip();
    asks(tab).back();
    asks(tab).oneMore();
    asks(tab).walkNow();
    asks(tab).toCoolDown();
    tab.sound.say('next');
    tab.sound.say('previous');
    await tab.clock.pass(1);
    expect(view(tab)).toMatchObject({ state: 'running', lane: 'session', position: 131_000 });
    asks(tab).end();
    expect(view(tab).state).toBe('ended-early');
  });

  it('DAY-4 holds everyone from the screen and from the lock screen, and goes on before the place', async () => {
    const tab = await leading();
    await tab.clock.pass(100);
    tab.sound.say('button-pause');
    expect(view(tab)).toMatchObject({ state: 'holding', position: 100_000 });
    expect(view(tab).offers).toMatchObject({ hold: false, goOn: true, coolDown: null });
    await tab.clock.pass(600);
    tab.sound.say('button-play');
    expect(view(tab)).toMatchObject({ state: 'running', position: 97_000 });
    asks(tab).somethingIsWrong();
    expect(view(tab)).toMatchObject({ state: 'holding', wrong: true });
    asks(tab).allRight();
    expect(view(tab)).toMatchObject({ state: 'holding', wrong: false });
  });

  it('DAY-4 sound that was away is told, and caught up with when the leader says so', async () => {
    const tab = await leading();
    await tab.clock.pass(70);
    tab.sound.take();
    await tab.clock.pass(50);
    tab.sound.say('woke');
    expect(view(tab).gap).toMatchObject({ position: 70_000 });
    asks(tab).afterGap('catch-up');
    expect(view(tab)).toMatchObject({ state: 'running', position: 120_000 });
  });

  it('DAY-5 leaves no entry and no journal, whether it comes to its end or is ended', async () => {
    for (const end of ['finished', 'ended'] as const) {
      const tab = await leading();
      await tab.clock.pass(100);
      expect((await stored(tab)).journals).toEqual([]);
      if (end === 'ended') asks(tab).end();
      await tab.clock.pass(400);
      const { log, journals } = await stored(tab);
      expect([log, journals]).toEqual([[], []]);
      expect(tab.app.log.getState().entries).toEqual([]);
      expect(asks(tab).entryId).toBeUndefined();
    }
  });

  it('DAY-5 a session of one’s own is not prepared while groups are led, nor the other way round', async () => {
    const tab = await leading();
    await asks(tab).prepare(CHOICE, 'sound');
    expect(view(tab)).toMatchObject({ state: 'running', purpose: 'lead' });
    asks(tab).end();
    await asks(tab).prepare(CHOICE, 'sound');
    asks(tab).start();
    await asks(tab).prepare(LED, 'sound');
    expect(view(tab)).toMatchObject({ state: 'running', purpose: 'session' });
    expect(view(tab).lead).toBeUndefined();
  });

  it('DAY-5 a second tab is refused while groups are led, and free afterwards', async () => {
    const first = await leading();
    const second = await openTab({ database: first.database, clock: first.clock });
    await asks(second).prepare(LED, 'sound');
    expect(view(second).busyElsewhere).toBe(true);
    asks(second).start();
    expect(view(second).state).toBe('ready');
    asks(first).end();
    await first.clock.pass(10);
    expect(view(second).busyElsewhere).toBe(false);
  });

  it('DAY-6 the lock screen has one title for each change, with who changes next', async () => {
    const tab = await leading();
    await tab.clock.pass(301);
    // Worked by hand from the plans: a minute of easy walk each, started a minute apart.
    expect(tab.seen.titles.map(({ title, artist }) => [title, artist])).toEqual([
      ['Group 1 easy walk · Groups 2, 3 wait', 'then group 1 walk · Group 2 easy walk'],
      ['Group 1 walk · Group 2 easy walk · Group 3 wait', 'then group 2 run · Group 3 easy walk'],
      [
        'Group 1 walk · Group 2 run · Group 3 easy walk',
        'then group 1 done · Group 2 walk · Group 3 run',
      ],
      ['Group 1 done · Group 2 walk · Group 3 run', 'then group 2 done'],
      ['Groups 1, 2 done · Group 3 run', 'then the end'],
      ['DONE', ''],
    ]);
    expect(tab.seen.titles[0]?.album).toBe('A mile on the marsh');
  });

  it('DAY-6 groups that do the same are named together, also on hold', async () => {
    const tab = await leading(ledWith([0, 0, 0]));
    expect(tab.seen.titles.at(-1)?.title).toBe('Groups 1, 2, 3 easy walk');
    await tab.clock.pass(70);
    asks(tab).hold();
    expect(tab.seen.titles.at(-1)).toMatchObject({
      title: 'ON HOLD',
      artist: 'Group 1 walk · Groups 2, 3 run',
    });
  });
});

describe('a start agreed ahead', () => {
  it('DAY-4 everyone waits in the track, and begins with it', async () => {
    const tab = await prepared();
    const at = tab.clock.now() + 90_000;
    asks(tab).start(at);
    await tab.clock.pass(60);
    expect(view(tab)).toMatchObject({ state: 'waiting', lead: LED });
    expect(view(tab).wait?.left).toBe(30_000);
    expect(tab.seen.titles.at(-1)).toMatchObject({
      title: expect.stringMatching(/^Starts at \d\d:\d\d$/),
      artist: 'then group 1 easy walk · Groups 2, 3 wait',
    });
    await tab.clock.pass(40);
    expect(view(tab)).toMatchObject({ state: 'running', position: 10_000 });
    tab.kill();
    const again = await reopened(tab);
    expect(asks(again).ledBefore?.mark).toEqual({ place: 0, wall: at, holding: false });
  });

  it('DAY-5 a wait that is left leaves nothing, and the groups can be started anew', async () => {
    const tab = await prepared();
    asks(tab).start(tab.clock.now() + 90_000);
    await tab.clock.pass(30);
    asks(tab).end();
    await tab.clock.pass(5);
    expect(view(tab)).toMatchObject({ state: 'ready', lead: LED });
    expect(asks(tab).ledBefore?.mark).toBeUndefined();
    const { log, journals } = await stored(tab);
    expect([log, journals]).toEqual([[], []]);
    asks(tab).start();
    await tab.clock.pass(5);
    expect(view(tab)).toMatchObject({ state: 'running', position: 5000 });
  });
});

describe('leading that was cut off', () => {
  it('DAY-7 is remembered, and gone on with where the groups are by the clock', async () => {
    const tab = await leading();
    await tab.clock.pass(30);
    tab.kill();
    await tab.clock.pass(40);
    const again = await reopened(tab);
    const before = asks(again).ledBefore;
    expect(before).toMatchObject({ key: 'sheet-1', choice: LED.choice });
    // As it was first seen to move.
    expect(before?.mark).toMatchObject({ place: 250, holding: false });
    await asks(again).prepare({ ...LED, ...(before?.mark && { from: before.mark }) }, 'sound');
    await again.clock.pass(10);
    expect(again.sound.plays).toBe(0);
    asks(again).start();
    await settle();
    // 30 + 40 + 10 seconds since the start.
    expect(view(again)).toMatchObject({ state: 'running', position: 80_000 });
    await again.clock.pass(5);
    expect(view(again).position).toBe(85_000);
    expect(again.sound.playing).toBe(true);
  });

  it('DAY-7 a sound that began late has the groups where it was, not where the tap was', async () => {
    const tab = await prepared();
    tab.sound.stick(true);
    asks(tab).start();
    await tab.clock.pass(6);
    tab.sound.stick(false);
    await tab.clock.pass(4);
    expect(view(tab)).toMatchObject({ state: 'running', position: 4000 });
    tab.kill();
    const again = await reopened(tab);
    const { mark } = asks(again).ledBefore ?? {};
    expect(mark && tab.clock.now() - mark.wall + mark.place).toBe(4000);
  });

  it('DAY-7 in a wait for an agreed start is offered to wait for it again', async () => {
    const tab = await prepared();
    const at = tab.clock.now() + 90_000;
    asks(tab).start(at);
    await tab.clock.pass(30);
    tab.kill();
    await tab.clock.pass(10);
    const again = await reopened(tab);
    const mark = asks(again).ledBefore?.mark;
    expect(mark).toEqual({ place: 0, wall: at, holding: false });
    await asks(again).prepare({ ...LED, ...(mark && { from: mark }) }, 'sound');
    asks(again).start();
    await again.clock.pass(20);
    expect(view(again)).toMatchObject({ state: 'waiting', lead: { key: LED.key } });
    // 90 seconds ahead, of which 30, 10 and 20 have passed.
    expect(view(again).wait?.left).toBe(30_000);
    await again.clock.pass(40);
    expect(view(again)).toMatchObject({ state: 'running', position: 10_000 });
  });

  it('DAY-7 in a wait whose start has passed since, they are where the clock has them', async () => {
    const tab = await prepared();
    asks(tab).start(tab.clock.now() + 90_000);
    await tab.clock.pass(30);
    tab.kill();
    await tab.clock.pass(100);
    const again = await reopened(tab);
    const mark = asks(again).ledBefore?.mark;
    await asks(again).prepare({ ...LED, ...(mark && { from: mark }) }, 'sound');
    asks(again).start();
    await settle();
    expect(view(again)).toMatchObject({ state: 'running', position: 40_000 });
  });

  it('DAY-7 on hold everyone is where they stood', async () => {
    const tab = await leading();
    await tab.clock.pass(100);
    asks(tab).hold();
    tab.kill();
    await tab.clock.pass(500);
    const again = await reopened(tab);
    expect(asks(again).ledBefore?.mark).toMatchObject({ place: 100_000, holding: true });
  });

  it('DAY-7 is not offered after the end, nor once the leader said that it is over', async () => {
    const tab = await leading();
    await tab.clock.pass(310);
    expect(asks(tab).ledBefore).toMatchObject({ choice: LED.choice });
    expect(asks(tab).ledBefore?.mark).toBeUndefined();
    const other = await leading();
    await other.clock.pass(30);
    other.kill();
    const again = await reopened(other);
    const mark = asks(again).ledBefore?.mark ?? { place: ms(0), wall: 0, holding: false };
    await asks(again).prepare({ ...LED, from: mark }, 'sound');
    asks(again).close();
    expect(asks(again).ledBefore?.mark).toBeUndefined();
    expect(asks(await reopened(again)).ledBefore?.mark).toBeUndefined();
  });

  it('DAY-7 gone on with after everyone is done, it comes to its end', async () => {
    const tab = await leading();
    await tab.clock.pass(30);
    tab.kill();
    const again = await reopened(tab);
    const mark = asks(again).ledBefore?.mark ?? { place: ms(0), wall: 0, holding: false };
    await asks(again).prepare({ ...LED, from: mark }, 'sound');
    await again.clock.pass(600);
    asks(again).start();
    await again.clock.pass(4);
    expect(view(again).state).toBe('finished');
  });

  it('DAY-7 a note of another kind is as good as none', async () => {
    for (const note of [null, 7, { key: 'sheet-1' }, { key: 1, choice: LED.choice }]) {
      const tab = await openTab({ note });
      expect(asks(tab).ledBefore).toBeUndefined();
    }
    const groups = [{ id: 'wren', here: true, minutesLater: -1, voice: 'words' }];
    const odd = await openTab({ note: { key: 'sheet-1', choice: { ...LED.choice, groups } } });
    expect(asks(odd).ledBefore).toBeUndefined();
    const mark = { place: -1, wall: 0, holding: false };
    const halved = await openTab({ note: { key: 'sheet-1', choice: LED.choice, mark } });
    expect(asks(halved).ledBefore).toEqual({ key: 'sheet-1', choice: LED.choice });
  });
});

describe('without a voice', () => {
  it('DAY-10 the screen alone leads, and is kept on', async () => {
    const pack = { load: async () => fail('missing' as const) };
    const tab = await prepared(LED, { pack });
    expect(view(tab).state).toBe('composing');
    await asks(tab).prepare(LED, 'screen');
    asks(tab).start();
    await tab.clock.pass(70);
    expect(view(tab)).toMatchObject({ state: 'running', medium: 'screen', position: 70_000 });
    expect(tab.seen.awake.at(-1)).toBe(true);
    asks(tab).hold();
    await tab.clock.pass(60);
    expect(view(tab)).toMatchObject({ state: 'holding', position: 70_000 });
    asks(tab).goOn();
    await tab.clock.pass(3);
    expect(view(tab).position).toBe(70_000);
  });
});
