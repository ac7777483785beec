import { describe, expect, it } from 'vitest';
import { HandClock, settle } from '../drivers/clock.ts';
import { asks, CHOICE, prepared, reopened, TOTAL, view } from '../drivers/own-session.ts';
import type { Tab, TabOptions } from '../drivers/phone.ts';
import { NINE_O_CLOCK } from '../drivers/sessions.ts';

const at = (seconds: number): number => NINE_O_CLOCK + seconds * 1000;
const entries = (tab: Tab) => tab.app.log.getState().entries;

/** A phone whose person has tapped for a start some seconds after nine. */
async function waiting(
  seconds: number,
  options: TabOptions = {},
  medium: 'sound' | 'screen' = 'sound',
): Promise<Tab> {
  const tab = await prepared(options, medium);
  asks(tab).start(at(seconds));
  await settle();
  return tab;
}

describe('one tap for a start agreed ahead', () => {
  it('WAIT-1 composes once with the wait before the session, and plays in the tap', async () => {
    const tab = await waiting(130);
    expect(tab.sound.loaded).toBe(2);
    expect(tab.sound.plays).toBe(1);
    // Whole minutes of lead-in, of which the last 130 seconds are to come.
    expect(tab.sound.place()).toBe(240_000 - 130_000);
    expect(view(tab)).toMatchObject({ state: 'waiting', position: 0, purpose: 'session' });
    expect(tab.seen.busy).toEqual([true]);
    await tab.clock.pass(129);
    expect(view(tab).state).toBe('waiting');
    await tab.clock.pass(2);
    expect(view(tab)).toMatchObject({ state: 'running' });
    expect(tab.sound.loaded).toBe(2);
    expect(tab.sound.plays).toBe(1);
  });

  it('PLAY-27 while its sound is late the wait says so, and counts by the wall clock', async () => {
    const tab = await prepared();
    tab.sound.stick(true);
    asks(tab).start(at(130));
    await settle();
    await tab.clock.pass(5);
    expect(view(tab)).toMatchObject({ state: 'waiting', late: true, wait: { left: 125_000 } });
    tab.sound.stick(false);
    await tab.clock.pass(1);
    expect(view(tab)).toMatchObject({ state: 'waiting' });
    expect(view(tab).late).toBeUndefined();
  });

  it('WAIT-1 two phones that are tapped at different moments are at the same place', async () => {
    const clock = new HandClock();
    const early = await waiting(600, { clock });
    await clock.pass(431.7);
    const late = await waiting(600, { clock });
    await clock.pass(200);
    expect(view(early).state).toBe('running');
    expect(view(late).state).toBe('running');
    expect(Math.abs(view(early).position - view(late).position)).toBeLessThan(300);
  });

  it('WAIT-1 goes to its end, and the log says that it began at the agreed time', async () => {
    const tab = await waiting(130);
    await tab.clock.pass(130 + TOTAL + 1);
    const [entry] = entries(tab);
    expect(entry).toMatchObject({ startedAt: at(130), doneSeconds: TOTAL, outcome: 'finished' });
    expect(asks(tab).entryId).toBe(entry?.id);
  });

  it('WAIT-1 a start too far ahead is refused, and one that has passed begins at the tap', async () => {
    const far = await waiting(30 * 60 + 60);
    expect(view(far).state).toBe('ready');
    expect(far.sound.plays).toBe(0);
    const past = await waiting(-1);
    expect(view(past)).toMatchObject({ state: 'running', position: 0 });
  });

  it('WAIT-1 a session on the screen waits by the same rules', async () => {
    const tab = await waiting(130, {}, 'screen');
    expect(view(tab)).toMatchObject({ state: 'waiting', medium: 'screen' });
    expect(tab.seen.awake.at(-1)).toBe(true);
    await tab.clock.pass(135);
    expect(view(tab)).toMatchObject({ state: 'running' });
    expect(Math.abs(view(tab).position - 5000)).toBeLessThanOrEqual(250);
    expect(tab.sound.plays).toBe(0);
  });

  it('WAIT-8 the view counts down to the start and says what comes first', async () => {
    const tab = await waiting(130);
    expect(view(tab).wait).toEqual({ startsAt: at(130), left: 130_000 });
    expect(view(tab).segment).toMatchObject({ activity: 'easy walk' });
    expect(view(tab).offers).toMatchObject({ goOn: true, hold: false, skip: false, back: false });
    await tab.clock.pass(60);
    expect(view(tab).wait?.left).toBe(70_000);
    await tab.clock.pass(75);
    expect(view(tab).wait).toBeUndefined();
  });

  it('WAIT-8 the lock screen says when, with the wait as a length of its own, then the session', async () => {
    const tab = await waiting(130);
    expect(tab.seen.titles.at(-1)?.title).toMatch(/^Starts at \d\d:\d\d$/);
    expect(tab.seen.titles.at(-1)?.artist).toBe('then EASY WALK 1:00');
    const [place = 0, length = 0, going] = tab.seen.places.at(-1) ?? [];
    expect(length - place).toBe(130_000);
    expect(going).toBe(true);
    await tab.clock.pass(131);
    expect(tab.seen.titles.at(-1)?.title).toBe('EASY WALK 1:00');
    expect(tab.seen.places.at(-1)?.[1]).toBe(TOTAL * 1000);
  });

  it('WAIT-8 the words of the wait are captions too', async () => {
    const tab = await waiting(130);
    await tab.clock.pass(4);
    expect(view(tab).caption).toMatch(/minutes/i);
    await tab.clock.pass(127);
    expect(view(tab).caption).not.toMatch(/to go/i);
  });

  it('WAIT-4 begun at once, it runs from its beginning', async () => {
    const tab = await waiting(130);
    await tab.clock.pass(10);
    asks(tab).goOn();
    await tab.clock.pass(5);
    expect(view(tab)).toMatchObject({ state: 'running', position: 5000 });
    await tab.clock.pass(TOTAL);
    expect(entries(tab)[0]).toMatchObject({ startedAt: at(10), doneSeconds: TOTAL });
  });

  it('WAIT-4 left, it is ready again without a lead-in, and nothing is in the log', async () => {
    const tab = await waiting(130);
    await tab.clock.pass(10);
    asks(tab).end();
    await settle();
    expect(view(tab)).toMatchObject({ state: 'ready', choice: CHOICE });
    expect(tab.sound.playing).toBe(false);
    expect(tab.seen.busy).toEqual([true, false]);
    expect(entries(tab)).toEqual([]);
    const again = await reopened(tab);
    expect(asks(again).unfinished).toBeUndefined();
    expect(entries(again)).toEqual([]);
    asks(tab).start();
    await tab.clock.pass(5);
    expect(view(tab)).toMatchObject({ state: 'running', position: 5000 });
    expect(tab.sound.place()).toBe(5000);
  });
});

describe('killed during a wait', () => {
  it('WAIT-7 before the start it is waited for again, and begins with the others', async () => {
    const tab = await waiting(600);
    await tab.clock.pass(100);
    tab.kill();
    await tab.clock.pass(60);
    const again = await reopened(tab);
    expect(asks(again).unfinished).toMatchObject({ offer: 'wait', startedAt: at(600) });
    expect(again.sound.plays).toBe(0);
    await asks(again).recover('go-on');
    await settle();
    expect(view(again)).toMatchObject({ state: 'waiting' });
    expect(again.sound.plays).toBe(1);
    await tab.clock.pass(450);
    expect(view(again).state).toBe('running');
    expect(Math.abs(view(again).position - 10_000)).toBeLessThanOrEqual(500);
    await tab.clock.pass(TOTAL);
    expect(entries(again)[0]).toMatchObject({ startedAt: at(600), doneSeconds: TOTAL });
  });

  it('WAIT-7 after the start the person chooses, and no sound comes before', async () => {
    const tab = await waiting(130);
    tab.kill();
    await tab.clock.pass(250);
    const again = await reopened(tab);
    await asks(again).recover('go-on');
    await settle();
    expect(view(again)).toMatchObject({ state: 'waiting-silent', wait: { left: 0 } });
    expect(again.sound.plays).toBe(0);
    asks(again).afterGap('catch-up');
    await tab.clock.pass(5);
    expect(view(again)).toMatchObject({ state: 'running', position: 125_000 });
  });

  it('WAIT-7 let go, or found long after, it leaves no entry', async () => {
    const tab = await waiting(130);
    tab.kill();
    const again = await reopened(tab);
    await asks(again).recover('keep');
    await settle();
    expect(asks(again).unfinished).toBeUndefined();
    expect(asks(again).entryId).toBeUndefined();
    const journals = await again.store.journals();
    expect(journals.ok && journals.value).toEqual([]);
    const other = await waiting(130);
    other.kill();
    await other.clock.pass(40 * 60);
    const late = await reopened(other);
    await settle();
    expect(asks(late).unfinished).toBeUndefined();
    expect(entries(late)).toEqual([]);
    const left = await late.store.journals();
    expect(left.ok && left.value).toEqual([]);
  });
});
