/** Sessions that are led by the app and written by hand, at places whose clocks change. */
import { describe, expect, it } from 'vitest';
import type { Choice } from '../../src/app/session-contract.ts';
import { entryByHand, putRight } from '../../src/domain/log/by-hand.ts';
import { readWhen } from '../../src/domain/log/fields.ts';
import { beganAt, clockOf, offsetIn } from '../../src/domain/log/local-time.ts';
import { readEntry } from '../../src/domain/log/read-entry.ts';
import { type HandClock, settle } from '../drivers/clock.ts';
import { openTab, type Tab } from '../drivers/phone.ts';
import { Travelling } from '../drivers/travelling.ts';

const CHOICE: Choice = {
  programmeId: 'heron-loop-spring',
  groupId: 'wren',
  week: 1,
  session: 1,
};

/** Goes through the start of a session, led by the app, and ends it. */
async function run(tab: Tab, seconds: number): Promise<string> {
  const { prepare, close } = tab.app.session.getState();
  close();
  await prepare(CHOICE, 'sound');
  tab.app.session.getState().start();
  await tab.clock.pass(seconds);
  tab.app.session.getState().end();
  await settle();
  const { entryId } = tab.app.session.getState();
  if (entryId === undefined) throw new Error('the session left no entry');
  return entryId;
}

async function phoneAt(zone: string, moment: string) {
  const clock = new Travelling();
  clock.goTo(zone);
  clock.turnTo(moment);
  return { clock, tab: await openTab({ clock }) };
}

const entries = (tab: Tab) => tab.app.log.getState().entries;
/** Oldest first, as the clocks of each place showed their start. */
const shown = (tab: Tab) =>
  [...entries(tab)].reverse().map((entry) => {
    const { date, time } = clockOf(entry);
    return `${date} ${time} ${entry.zone}`;
  });
/** What the phone shows when it is opened anew. */
async function reopened(tab: Tab, clock: HandClock): Promise<Tab> {
  await settle();
  tab.kill();
  return openTab({ clock, database: tab.database });
}

describe('sessions where clocks change', () => {
  it('LOG-11 over midnight a session belongs to the day on which it began', async () => {
    const { tab, clock } = await phoneAt('Europe/London', '2027-06-30T22:50:00Z');
    await run(tab, 25 * 60);
    clock.turnTo('2027-06-30T23:40:00Z');
    await run(tab, 60);
    expect(entries(tab).map(({ localDate }) => localDate)).toEqual(['2027-07-01', '2027-06-30']);
    expect(shown(tab)).toEqual([
      '2027-06-30 23:50 Europe/London',
      '2027-07-01 00:40 Europe/London',
    ]);
    expect(entries(tab)[1]?.doneSeconds).toBe(1500);
  });

  it('LOG-11 two sessions in an hour that comes twice stay in their order, with the same local date', async () => {
    const { tab, clock } = await phoneAt('Europe/Amsterdam', '2027-10-31T00:40:00Z');
    const first = await run(tab, 60);
    clock.turnTo('2027-10-31T01:10:00Z');
    const second = await run(tab, 60);
    // By the clocks the second began half an hour before the first.
    expect(shown(tab)).toEqual([
      '2027-10-31 02:40 Europe/Amsterdam',
      '2027-10-31 02:10 Europe/Amsterdam',
    ]);
    expect(entries(tab).map(({ offsetMinutes }) => offsetMinutes)).toEqual([60, 120]);
    const again = await reopened(tab, clock);
    expect(entries(again).map(({ id }) => id)).toEqual([second, first]);
  });

  it('LOG-11 a session across the hour that is left out in spring is as long as it was', async () => {
    const { tab } = await phoneAt('America/New_York', '2027-03-14T06:50:00Z');
    await run(tab, 20 * 60);
    expect(shown(tab)).toEqual(['2027-03-14 01:50 America/New_York']);
    expect(entries(tab)[0]).toMatchObject({ doneSeconds: 1200, offsetMinutes: -300 });
  });

  it('LOG-11 a flight over nine time zones keeps the local dates and the order', async () => {
    const { tab, clock } = await phoneAt('Asia/Tokyo', '2027-03-08T22:00:00Z');
    const tokyo = await run(tab, 60);
    clock.goTo('Europe/London');
    clock.turnTo('2027-03-09T14:00:00Z');
    const london = await run(tab, 60);
    clock.goTo('America/Los_Angeles');
    clock.turnTo('2027-03-10T04:00:00Z');
    const west = await run(tab, 60);
    // On the same calendar day at two places, and on the day before after the last flight.
    expect(shown(tab)).toEqual([
      '2027-03-09 07:00 Asia/Tokyo',
      '2027-03-09 14:00 Europe/London',
      '2027-03-09 20:00 America/Los_Angeles',
    ]);
    const again = await reopened(tab, clock);
    expect(entries(again).map(({ id }) => id)).toEqual([west, london, tokyo]);
    expect(entries(again)[2]).toMatchObject({ localDate: '2027-03-09', offsetMinutes: 540 });
  });

  it('LOG-11 crossing the date line eastwards, a later session may have the earlier date', async () => {
    const { tab, clock } = await phoneAt('Pacific/Auckland', '2027-03-08T20:00:00Z');
    const there = await run(tab, 60);
    clock.goTo('Pacific/Honolulu');
    clock.turnTo('2027-03-09T06:00:00Z');
    const back = await run(tab, 60);
    expect(shown(tab)).toEqual([
      '2027-03-09 09:00 Pacific/Auckland',
      '2027-03-08 20:00 Pacific/Honolulu',
    ]);
    expect(entries(tab).map(({ id }) => id)).toEqual([back, there]);
  });

  it('LOG-11 what is written by hand at home falls between what was run abroad', async () => {
    const { tab, clock } = await phoneAt('Asia/Tokyo', '2027-03-08T22:00:00Z');
    const first = await run(tab, 60);
    clock.goTo('Europe/London');
    clock.turnTo('2027-03-10T18:00:00Z');
    const last = await run(tab, 60);
    const [example] = entries(tab);
    const read = readWhen('2027-03-09', '11:00', {
      now: clock.now(),
      zone: 'Europe/London',
      offsetAt: (utc) => clock.zoneTime(utc).offsetMinutes,
    });
    if (!read.ok || example === undefined) throw new Error('not read');
    const which = { ...example, planSeconds: 60 };
    const { programme, group, week, session, plan, target, planSeconds } = which;
    const by = { programme, group, week, session, plan, target, planSeconds };
    await tab.app.log.getState().write(entryByHand('hand', by, read.value, 'all', 'by-hand'));
    expect(entries(tab).map(({ id }) => id)).toEqual([last, 'hand', first]);
    const again = await reopened(tab, clock);
    expect(entries(again).map(({ id }) => id)).toEqual([last, 'hand', first]);
  });

  it('LOG-11 a time put right is by the clocks of the place where the session began', async () => {
    const { tab, clock } = await phoneAt('Asia/Tokyo', '2027-03-08T22:00:00Z');
    await run(tab, 60);
    clock.goTo('Europe/London');
    const [entry] = entries(tab);
    const offsetAt = offsetIn(entry?.zone ?? '');
    if (entry === undefined || offsetAt === undefined) throw new Error('no entry');
    const read = readWhen('2027-03-09', '06:30', { now: clock.now(), zone: entry.zone, offsetAt });
    if (!read.ok) throw new Error(read.error);
    await tab.app.log.getState().write(putRight(entry, { began: read.value }, 60, clock.now()));
    expect(shown(tab)).toEqual(['2027-03-09 06:30 Asia/Tokyo']);
    expect(entries(tab)[0]?.startedAt).toBe(Date.parse('2027-03-08T21:30:00Z'));
  });

  it('LOG-11 a clock that was put back never moves what was done before it', async () => {
    const { tab, clock } = await phoneAt('Europe/London', '2027-03-08T10:00:00Z');
    const before = await run(tab, 60);
    const kept = entries(tab)[0];
    clock.turnTo('2027-03-07T10:00:00Z');
    await run(tab, 60);
    const again = await reopened(tab, clock);
    expect(entries(again).find(({ id }) => id === before)).toEqual(kept);
    expect(entries(again).every((entry) => readEntry(entry) === entry)).toBe(true);
    // By UTC, as the phone had it: the person can put the time right.
    expect(entries(again).map(({ localDate }) => localDate)).toEqual(['2027-03-08', '2027-03-07']);
  });

  it('LOG-6 a moment of the entry is the moment of the zone database', async () => {
    const { tab } = await phoneAt('Asia/Kathmandu', '2027-03-08T18:14:00Z');
    await run(tab, 60);
    const [entry] = entries(tab);
    expect(entry).toMatchObject({ localDate: '2027-03-08', offsetMinutes: 345 });
    expect(beganAt(entry?.startedAt ?? 0, { offsetMinutes: 345, zone: 'Asia/Kathmandu' })).toEqual({
      startedAt: entry?.startedAt,
      offsetMinutes: 345,
      zone: 'Asia/Kathmandu',
      localDate: '2027-03-08',
    });
  });
});
