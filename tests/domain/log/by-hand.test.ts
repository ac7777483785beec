import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  atTheSameTime,
  entryByHand,
  putRight,
  thereNow,
  type Which,
  withFeeling,
} from '../../../src/domain/log/by-hand.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import {
  endsInTime,
  FASTEST_M_PER_S,
  type Here,
  kilometres,
  LONGEST_MINUTES,
  readKilometres,
  readMinutes,
  readWhen,
} from '../../../src/domain/log/fields.ts';
import { type Began, beganAt, offsetIn } from '../../../src/domain/log/local-time.ts';
import { ABOUT } from '../../drivers/sessions.ts';

const utc = (text: string): number => Date.parse(text);

/** Somebody who writes at a moment, at a place. */
function hereAt(zone: string, now: string): Here & { began(utc: number): Began } {
  const offsetAt = offsetIn(zone);
  if (offsetAt === undefined) throw new Error(`no zone ${zone}`);
  const began = (at: number) => beganAt(at, { zone, offsetMinutes: offsetAt(at) });
  return { now: utc(now), zone, offsetAt, began };
}

const WHICH: Which = {
  programme: ABOUT.programme,
  group: ABOUT.group,
  week: 2,
  session: 1,
  plan: ABOUT.plan,
  target: 50,
  planSeconds: 390,
};
const HOME = hereAt('Europe/Amsterdam', '2027-03-08T18:30Z');
const entry = (more: Partial<LogEntry> = {}): LogEntry => ({
  ...entryByHand('one', WHICH, HOME.began(utc('2027-03-07T09:00Z')), 'all', 'by-hand'),
  ...more,
});

describe('a session written down by hand', () => {
  it('LOG-7 all of it is the whole plan; less is the first part; more is more time moved', () => {
    const of = (amount: 'all' | number) => {
      const { outcome, doneSeconds, activeSeconds, covered } = entryByHand(
        'one',
        WHICH,
        HOME.began(HOME.now),
        amount,
        'by-hand',
      );
      return [outcome, doneSeconds, activeSeconds, covered];
    };
    expect(of('all')).toEqual(['finished', 390, 390, [[0, 390]]]);
    expect(of(240)).toEqual(['ended-early', 240, 240, [[0, 240]]]);
    expect(of(390)).toEqual(['finished', 390, 390, [[0, 390]]]);
    expect(of(600)).toEqual(['finished', 390, 600, [[0, 390]]]);
  });

  it('LOG-7 "I was there" began as long ago as the session takes, yesterday when that was', () => {
    const night = hereAt('Europe/Amsterdam', '2027-03-08T23:03Z');
    const made = thereNow('g', WHICH, night.now, night.began);
    expect(made).toMatchObject({
      how: 'there',
      outcome: 'finished',
      startedAt: utc('2027-03-08T22:56:30Z'),
      localDate: '2027-03-08',
      zone: 'Europe/Amsterdam',
      offsetMinutes: 60,
      feeling: {},
    });
    expect(Object.keys(made)).not.toContain('planSeconds');
  });

  it('LOG-8 what was put right is put right, and everything else stays to the second', () => {
    const before = entry({
      feeling: { effort: 6, note: 'Wind' },
      feltAt: 5,
      distanceM: 900,
      how: 'app',
      covered: [
        [0, 100],
        [200, 390],
      ],
    });
    expect(putRight(before, {}, 390, 77)).toEqual({ ...before, editedAt: 77 });
    const began = HOME.began(utc('2027-03-06T07:15Z'));
    expect(putRight(before, { began }, 390, 77)).toEqual({ ...before, ...began, editedAt: 77 });
    expect(putRight(before, { amount: 120 }, 390, 77)).toMatchObject({
      outcome: 'ended-early',
      doneSeconds: 120,
      covered: [[0, 120]],
      feeling: before.feeling,
      how: 'app',
    });
    const other = { ...WHICH, week: 3, plan: '5 min walk', planSeconds: 300 };
    const moved = putRight(before, { which: other, amount: 'all' }, 300, 77);
    expect(moved).toMatchObject({ id: 'one', week: 3, plan: '5 min walk', doneSeconds: 300 });
    expect(Object.keys(moved)).not.toContain('planSeconds');
  });

  it('LOG-4 what is said of it is kept with the entry, and a distance can be taken back', () => {
    const said = withFeeling(entry(), { effort: 4 }, 2500, 9);
    expect(said).toEqual({ ...entry(), feeling: { effort: 4 }, feltAt: 9, distanceM: 2500 });
    expect(withFeeling(said, { effort: 4 }, undefined, 10)).toEqual({
      ...entry(),
      feeling: { effort: 4 },
      feltAt: 10,
    });
  });

  it('LOG-9 another session at the same time is found, one right before or after is none', () => {
    const one = entry();
    const from = (seconds: number, id = 'two') =>
      entry({ id, startedAt: one.startedAt + seconds * 1000 });
    expect(atTheSameTime([from(389)], one)?.id).toBe('two');
    expect(atTheSameTime([from(-389)], one)?.id).toBe('two');
    expect(atTheSameTime([from(390), from(-390)], one)).toBeUndefined();
    expect(atTheSameTime([one, from(10, 'one')], one)).toBeUndefined();
  });
});

describe('what cannot have been', () => {
  const when = (date: string, time: string, here = HOME) => {
    const read = readWhen(date, time, here);
    return read.ok ? new Date(read.value.startedAt).toISOString().slice(0, 16) : read.error;
  };

  it('LOG-9 a date or a time in the future is caught, by the clocks of the place', () => {
    // 19:30 in Amsterdam on 8 March.
    expect(when('2027-03-08', '19:30')).toBe('2027-03-08T18:30');
    expect(when('2027-03-08', '19:31')).toBe('time-future');
    expect(when('2027-03-09', '00:00')).toBe('date-future');
    // In Tokyo it is 03:30 on the 9th by then.
    const tokyo = hereAt('Asia/Tokyo', '2027-03-08T18:30Z');
    expect(when('2027-03-09', '03:30', tokyo)).toBe('2027-03-08T18:30');
    expect(when('2027-03-09', '03:31', tokyo)).toBe('time-future');
    expect(when('12027-03-08', '10:00')).toBe('date-future');
  });

  it('LOG-9 an empty or impossible date or time is caught, and one that the clocks left out', () => {
    expect(when('', '10:00')).toBe('date-none');
    expect(when('8.3.2027', '10:00')).toBe('date-none');
    expect(when('2027-02-30', '10:00')).toBe('date-none');
    expect(when('0207-03-08', '10:00')).toBe('date-old');
    expect(when('1999-12-31', '10:00')).toBe('date-old');
    expect(when('2027-03-08', '')).toBe('time-none');
    const spring = hereAt('Europe/Amsterdam', '2027-04-01T12:00Z');
    expect(when('2027-03-28', '02:30', spring)).toBe('time-skipped');
    expect(when('2027-03-28', '03:30', spring)).toBe('2027-03-28T01:30');
  });

  it('LOG-9 of an hour that was there twice the first is taken', () => {
    const autumn = hereAt('Europe/Amsterdam', '2027-11-01T12:00Z');
    const read = readWhen('2027-10-31', '02:30', autumn);
    expect(read).toEqual({
      ok: true,
      value: {
        startedAt: utc('2027-10-31T00:30Z'),
        offsetMinutes: 120,
        zone: 'Europe/Amsterdam',
        localDate: '2027-10-31',
      },
    });
  });

  it('LOG-9 a session of 40 hours is caught, and one that would still be going on', () => {
    expect(readMinutes(' 25 ')).toEqual({ ok: true, value: 1500 });
    expect(readMinutes('12,5')).toEqual({ ok: true, value: 750 });
    expect(readMinutes(String(40 * 60))).toEqual({ ok: false, error: 'minutes-long' });
    expect(readMinutes(String(LONGEST_MINUTES)).ok).toBe(true);
    expect(readMinutes(String(LONGEST_MINUTES + 1)).ok).toBe(false);
    expect(readMinutes('')).toEqual({ ok: false, error: 'minutes-none' });
    for (const odd of ['0', '-5', 'half an hour', '1e9999', 'NaN'])
      expect(readMinutes(odd), odd).toEqual({ ok: false, error: 'minutes-number' });
    expect(endsInTime(HOME.now - 390_000, 390, HOME.now)).toBe(true);
    expect(endsInTime(HOME.now - 389_000, 390, HOME.now)).toBe(false);
  });

  it('LOG-9 a distance that nobody runs is caught, and every one that people run is taken', () => {
    // World records on the track, from memory: 5 km 12:35, 10 km 26:11, hour 21.33 km.
    for (const [km, seconds] of [
      ['5', 755],
      ['10', 1571],
      ['21,33', 3600],
    ] as const)
      expect(readKilometres(km, seconds).ok, km).toBe(true);
    // 31 minutes: 31 km is metres typed as kilometres or a ride.
    expect(readKilometres('31', 1860)).toEqual({ ok: false, error: 'distance-fast' });
    expect(readKilometres('3100', 1860)).toEqual({ ok: false, error: 'distance-fast' });
    // Two minutes at 2.5 m/s and one at 1.5 m/s are 390 m in 180 s.
    expect(readKilometres('0.39', 180)).toEqual({ ok: true, value: 390 });
    expect(readKilometres('', 1860)).toEqual({ ok: true, value: undefined });
    expect(readKilometres('3.', 1860)).toEqual({ ok: true, value: 3000 });
    for (const odd of ['-1', '0', '3 km', 'far', '1e3', '1.2.3', ','])
      expect(readKilometres(odd, 1860), odd).toEqual({ ok: false, error: 'distance-number' });
  });

  it('LOG-9 a distance is given back to the field as it was read', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 42_195 }), (metres) => {
        expect(readKilometres(kilometres(metres), 42_195 / FASTEST_M_PER_S + 1)).toEqual({
          ok: true,
          value: metres,
        });
      }),
    );
  });

  it('LOG-9 whatever is typed is read or refused, and what is read is a possible session', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.string(), fc.string(), (date, time, min, km) => {
        const began = readWhen(date, time, HOME);
        if (began.ok) expect(began.value.startedAt).toBeLessThanOrEqual(HOME.now);
        const done = readMinutes(min);
        if (done.ok) expect(done.value).toBeLessThanOrEqual(LONGEST_MINUTES * 60);
        const far = readKilometres(km, 1800);
        if (far.ok && far.value !== undefined)
          expect(far.value).toBeLessThanOrEqual(1800 * FASTEST_M_PER_S);
      }),
    );
  });
});
