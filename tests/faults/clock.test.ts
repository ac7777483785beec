import { describe, expect, it } from 'vitest';
import { settle } from '../drivers/clock.ts';
import { SHORTER, SHORTER_S } from '../drivers/faults/participant.ts';
import { tellFault } from '../drivers/faults/tell.ts';
import { asks, CHOICE, reopened, view } from '../drivers/own-session.ts';
import { openTab, type Tab, take } from '../drivers/phone.ts';
import { Travelling } from '../drivers/travelling.ts';

const HOUR_S = 3600;
/** Both ways: a little, by the hour of a wrong summer time, a zone, a day, a year. */
const JUMPS_S = [-1, 1].flatMap((way) =>
  [5, HOUR_S, 10 * HOUR_S, 24 * HOUR_S, 365 * 24 * HOUR_S].map((s) => way * s),
);

/** A session that has run for half a minute at a place and a time. */
async function begun(zone: string, moment: string): Promise<{ tab: Tab; clock: Travelling }> {
  const clock = new Travelling();
  clock.goTo(zone);
  clock.turnTo(moment);
  const tab = await openTab({ clock });
  await take(tab.app, SHORTER);
  await asks(tab).prepare(CHOICE, 'sound');
  asks(tab).start();
  await clock.pass(30);
  return { tab, clock };
}

/** It runs to its end, and is found at the next opening. */
async function kept(tab: Tab): Promise<unknown> {
  await tab.clock.pass(SHORTER_S);
  await settle();
  tab.kill();
  const again = await reopened(tab);
  const { entries } = again.app.log.getState();
  again.kill();
  return entries.map(({ outcome, doneSeconds, localDate, zone, offsetMinutes, week, session }) => ({
    ...{ outcome, doneSeconds, localDate, zone, offsetMinutes, week, session },
  }));
}

const WHOLE = { outcome: 'finished', doneSeconds: SHORTER_S, week: 1, session: 1 };

describe('a session with a faulty clock', () => {
  it('FAULT-5 the wall clock put back or forward in the middle: it goes on by its sound and keeps length, day and place', async () => {
    for (const jump of JUMPS_S) {
      const { tab, clock } = await begun('Europe/Paris', '2027-03-07T08:00:00Z');
      const before = view(tab).position;
      clock.sleep(jump);
      await clock.pass(2);
      // A jump forward looks as if the phone had slept, and may be asked about; none moves the place.
      if (view(tab).gap !== undefined) asks(tab).afterGap('go-on');
      expect(Math.abs(view(tab).position - before), `${jump} s`).toBeLessThanOrEqual(3500);
      expect(await kept(tab), `${jump} s`).toEqual([
        { ...WHOLE, localDate: '2027-03-07', zone: 'Europe/Paris', offsetMinutes: 60 },
      ]);
    }
    tellFault('the clock put back or forward while a session runs', JUMPS_S.length, 'nothing');
  }, 120_000);

  /** The last day of March in Paris, and of October: from the EU's rule (Directive 2000/84/EC). */
  const CHANGES = [
    ['an hour left out in spring', '2027-03-28T00:59:30Z', '2027-03-28', 60],
    ['an hour that comes twice in autumn', '2027-10-31T00:59:30Z', '2027-10-31', 120],
    ['midnight', '2027-03-07T22:59:30Z', '2027-03-07', 60],
  ] as const;

  it('FAULT-5 begun before the change of clocks or midnight and finished after it: it is as long as it was, on the day it began', async () => {
    for (const [what, moment, localDate, offsetMinutes] of CHANGES) {
      const { tab } = await begun('Europe/Paris', moment);
      expect(await kept(tab), what).toEqual([
        { ...WHOLE, localDate, zone: 'Europe/Paris', offsetMinutes },
      ]);
    }
    tellFault('the change of clocks, or midnight, while a session runs', CHANGES.length, 'nothing');
  }, 60_000);

  it('FAULT-5 begun in one zone and finished in another: it belongs to the zone and the day where it began', async () => {
    const zones = ['America/Los_Angeles', 'Asia/Tokyo', 'Pacific/Kiritimati'];
    for (const zone of zones) {
      const { tab, clock } = await begun('Europe/Paris', '2027-03-07T08:00:00Z');
      clock.goTo(zone);
      expect(await kept(tab), zone).toEqual([
        { ...WHOLE, localDate: '2027-03-07', zone: 'Europe/Paris', offsetMinutes: 60 },
      ]);
    }
    tellFault('another time zone while a session runs', zones.length, 'nothing');
  }, 60_000);
});
