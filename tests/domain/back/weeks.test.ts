import { describe, expect, it } from 'vitest';
import { loadOf, sessionBack } from '../../../src/domain/back/session.ts';
import { byWeek, weeksUpTo } from '../../../src/domain/back/weeks.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import { isoDate } from '../../../src/domain/programme/calendar.ts';
import { weeksBack } from '../../drivers/all-weeks.ts';
import { byHand, entryWith, laid, TURNS, WALKS } from './entries.ts';

const back = (entry: LogEntry) => sessionBack(entry, laid(entry.plan));
const minutesOf = (entry: LogEntry) => {
  const { walk, run, still, extra, basis } = back(entry);
  const [w, r, s, e] = [walk, run, still, extra].map((value) => value / 60_000);
  return { walk: w, run: r, still: s, extra: e, basis };
};

describe('the minutes of a session', () => {
  it('BACK-2 a session done whole has the minutes of its plan', () => {
    expect(minutesOf(entryWith())).toEqual({
      walk: 16,
      run: 12,
      still: 0,
      extra: 0,
      basis: 'covered',
    });
  });

  it('BACK-2 only the stretches that were gone through count', () => {
    // Warm-up, the first run, and half of the walk after it; then the last two minutes.
    const covered = [
      [0, 450],
      [1560, 1680],
    ] as const;
    expect(minutesOf(entryWith({ covered, doneSeconds: 570, activeSeconds: 570 }))).toEqual({
      walk: 7.5,
      run: 2,
      still: 0,
      extra: 0,
      basis: 'covered',
    });
  });

  it('BACK-2 stretches that overlap or stand in no order count once', () => {
    const covered = [
      [300, 420],
      [0, 400],
      [390, 420],
    ] as const;
    expect(minutesOf(entryWith({ covered, activeSeconds: 420 }))).toMatchObject({
      walk: 5,
      run: 2,
    });
  });

  it('BACK-2 standing and stretching are neither walked nor run', () => {
    const plan = '5 min easy walk; 3 min stretch; 10 min run; 2 min stand; 5 min easy walk';
    expect(minutesOf(entryWith({ plan }))).toMatchObject({ walk: 10, run: 10, still: 5 });
  });

  it('BACK-2 every kind of jog and run is running', () => {
    const plan =
      'warm-up: 5 min walk; main: 1 min easy jog, 1 min jog, 1 min run, 1 min steady run, 1 min strong run, 1 min fast run';
    expect(minutesOf(entryWith({ plan }))).toMatchObject({ walk: 5, run: 6 });
  });

  it('BACK-2 extra minutes and repeats are told apart, as nobody knows what they were', () => {
    expect(minutesOf(entryWith({ activeSeconds: 1680 + 180 }))).toMatchObject({
      walk: 16,
      run: 12,
      extra: 3,
    });
  });

  it('BACK-3 written down with minutes, they are shared out as the plan shares its own', () => {
    const half = byHand({ doneSeconds: 840, activeSeconds: 840, outcome: 'ended-early' });
    expect(minutesOf(half)).toEqual({ walk: 8, run: 6, still: 0, extra: 0, basis: 'shared-out' });
    const longer = byHand({ doneSeconds: 3360, activeSeconds: 3360 });
    expect(minutesOf(longer)).toMatchObject({ walk: 32, run: 24, basis: 'shared-out' });
  });

  it('BACK-3 written down as done, it was the whole plan', () => {
    const whole = { walk: 16, run: 12, still: 0, extra: 0, basis: 'whole-plan' };
    expect(minutesOf(byHand())).toEqual(whole);
    expect(minutesOf(byHand({ doneSeconds: 0, activeSeconds: 0 }))).toEqual(whole);
    expect(minutesOf(byHand({ how: 'there', doneSeconds: 0, activeSeconds: 0 }))).toEqual(whole);
  });

  it('BACK-3 written down with the stretches it is taken to have had, these count, as told', () => {
    const part = entryWith({ how: 'by-hand', covered: [[0, 480]], doneSeconds: 480 });
    expect(minutesOf({ ...part, activeSeconds: 480 })).toEqual({
      walk: 6,
      run: 2,
      still: 0,
      extra: 0,
      basis: 'as-told',
    });
    expect(back(part).longestRun).toBe(120_000);
  });

  it('BACK-3 nothing gone through is nothing, not the whole plan', () => {
    const nothing = { covered: [], doneSeconds: 0, activeSeconds: 0 } as const;
    expect(minutesOf(entryWith({ ...nothing }))).toMatchObject({ walk: 0, run: 0 });
    const early = byHand({ ...nothing, outcome: 'ended-early' });
    expect(minutesOf(early)).toMatchObject({ walk: 0, run: 0 });
  });

  it('BACK-3 led, and ended at once, it has the stretches that it tells of, and was not written down', () => {
    // Three pieces of 0.4 s: together a second, and none of them long enough to be told in seconds.
    const pieces = {
      covered: [],
      doneSeconds: 1,
      activeSeconds: 1,
      outcome: 'ended-early',
    } as const;
    expect(minutesOf(entryWith(pieces))).toMatchObject({ walk: 0, run: 0, basis: 'covered' });
  });

  it('BACK-3 a plan that cannot be read leaves the minutes unknown and the load as it is', () => {
    const entry = entryWith({ plan: '5 m', activeSeconds: 1200, feeling: { effort: 4 } });
    const found = sessionBack(entry, undefined);
    expect(found).toMatchObject({ basis: 'not-known', walk: 0, run: 0, still: 0 });
    expect(loadOf(found.load)).toBe(80);
    expect(found).not.toHaveProperty('longestRun');
  });
});

describe('load', () => {
  it('BACK-5 it is the rating times the minutes moved', () => {
    // The arithmetic alone, on the first rows of Foster et al. 2001, J Strength Cond Res
    // 15(1):109-15, table 5; the scale there is another, and so is our name.
    for (const [rating, minutes, expected] of [
      [2, 25, 50],
      [7, 120, 840],
      [7, 40, 280],
      [3, 60, 180],
    ] as const) {
      const entry = entryWith({ activeSeconds: minutes * 60, feeling: { effort: rating } });
      expect(loadOf(back(entry).load)).toBe(expected);
    }
  });

  it('BACK-5 repeats and extra minutes count in it, as they were moved', () => {
    const entry = entryWith({ activeSeconds: 2400, feeling: { effort: 5 } });
    expect(loadOf(back(entry).load)).toBe(200);
  });

  it('BACK-5 a session without a rating adds nothing, and the week says how many have one', () => {
    const [week] = weeksBack([entryWith({ feeling: { effort: 5 } }), entryWith()]);
    expect(week).toMatchObject({ sessions: 2, rated: 1 });
    expect(loadOf(week?.load ?? 0)).toBe(140);
  });

  it('BACK-5 rest is a rating, and a number outside of the scale is none', () => {
    expect(back(entryWith({ feeling: { effort: 0 } }))).toMatchObject({ felt: 0, rated: 1 });
    expect(back(entryWith({ feeling: { effort: 11 } })).rated).toBe(0);
    expect(back(entryWith({ feeling: { effort: -1 } })).rated).toBe(0);
  });

  it('BACK-5 written down with no minutes at all, a session moved for as long as its plan', () => {
    const entry = byHand({ doneSeconds: 0, activeSeconds: 0, feeling: { effort: 5 } });
    expect(loadOf(back(entry).load)).toBe(140);
  });

  it('BACK-9 one way of rating holds for all; where the later one is missing, the first stands in', () => {
    const both = entryWith({ feeling: { effort: 6, effortLater: 4 } });
    const one = entryWith({ feeling: { effort: 6 } });
    const later = entryWith({ feeling: { effortLater: 4 } });
    const felt = (entry: LogEntry, way?: 'later') => sessionBack(entry, laid(TURNS), way).felt;
    expect([felt(both), felt(one), felt(later)]).toEqual([6, 6, undefined]);
    expect([felt(both, 'later'), felt(one, 'later')]).toEqual([4, 6]);
  });
});

describe('the longest running stretch', () => {
  it('BACK-6 a walk ends it, the next run step does not', () => {
    const plan = '5 min walk; 3 min jog, 4 min run; 1 min walk, 6 min run; 5 min walk';
    expect(back(entryWith({ plan })).longestRun).toBe(7 * 60_000);
    expect(back(entryWith({ plan: WALKS })).longestRun).toBe(0);
  });

  it('BACK-6 a part that was left out ends it', () => {
    const plan = '5 min walk; 20 min run; 5 min walk';
    const covered = [
      [0, 700],
      [800, 1800],
    ] as const;
    expect(back(entryWith({ plan, covered })).longestRun).toBe((1500 - 800) * 1000);
  });

  it('BACK-6 with minutes alone it is known only when they hold the whole plan', () => {
    expect(back(byHand()).longestRun).toBe(120_000);
    expect(back(byHand({ doneSeconds: 2000, activeSeconds: 2000 })).longestRun).toBe(120_000);
    expect(back(byHand({ doneSeconds: 800, activeSeconds: 800 }))).not.toHaveProperty('longestRun');
  });

  it('BACK-6 that of a week is the longest of its sessions', () => {
    const [week] = weeksBack([entryWith({ plan: WALKS }), entryWith(), byHand({ plan: '5 m' })]);
    expect(week?.longestRun).toBe(120_000);
    const [unknown] = weeksBack([byHand({ doneSeconds: 800 })]);
    expect(unknown).not.toHaveProperty('longestRun');
  });
});

describe('weeks', () => {
  it('BACK-1 Sunday ends a week and Monday begins one', () => {
    const days = ['2027-03-07', '2027-03-08', '2027-03-01'];
    const weeks = weeksBack(days.map((localDate) => entryWith({ localDate })));
    expect(weeks.map(({ monday, sessions }) => [isoDate(monday), sessions])).toEqual([
      ['2027-03-01', 2],
      ['2027-03-08', 1],
    ]);
  });

  it('BACK-1 the date where the person was decides, not that of UTC', () => {
    // Sunday 23:30 in UTC is Monday morning nine zones east.
    const startedAt = Date.UTC(2027, 2, 7, 23, 30);
    const east = { startedAt, offsetMinutes: 540, zone: 'Asia/Tokyo', localDate: '2027-03-08' };
    const here = { startedAt, offsetMinutes: 0, localDate: '2027-03-07' };
    const weeks = weeksBack([entryWith(east), entryWith(here)]);
    expect(weeks.map(({ monday }) => isoDate(monday))).toEqual(['2027-03-01', '2027-03-08']);
  });

  it('BACK-1 an entry whose date is none is kept on the day of its start', () => {
    const startedAt = Date.UTC(2027, 2, 7, 23, 30);
    const odd = entryWith({ startedAt, offsetMinutes: 60, localDate: '2027-02-30' });
    expect(weeksBack([odd]).map(({ monday }) => isoDate(monday))).toEqual(['2027-03-08']);
  });

  it('BACK-1 weeks without a session stand between the others, empty', () => {
    const weeks = byWeek([
      entryWith({ localDate: '2027-03-03' }),
      entryWith({ localDate: '2027-03-24' }),
    ]);
    const last = Math.max(...weeks.keys());
    expect(weeksUpTo(weeks, last, 5).map(({ sessions }) => sessions)).toEqual([0, 1, 0, 0, 1]);
    expect(weeksUpTo(weeks, last, 5).map(({ monday }) => isoDate(monday))).toEqual([
      '2027-02-22',
      '2027-03-01',
      '2027-03-08',
      '2027-03-15',
      '2027-03-22',
    ]);
  });

  it('BACK-7 walking and running minutes count apart, each by its own energy', () => {
    // 10 easy and 6 ordinary walking minutes are moderate, 12 running ones vigorous.
    const [week] = weeksBack([entryWith()]);
    expect([week?.moderate, week?.vigorous]).toEqual([16 * 60_000, 12 * 60_000]);
    const plan = '5 min slow walk; 20 min brisk walk; 5 min stretch';
    const [calm] = weeksBack([entryWith({ plan })]);
    expect([calm?.moderate, calm?.vigorous]).toEqual([20 * 60_000, 0]);
  });
});
