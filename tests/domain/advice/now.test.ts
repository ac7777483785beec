import { describe, expect, it } from 'vitest';
import { nowOf } from '../../../src/domain/advice/now.ts';
import { localDate } from '../../../src/domain/log/local-date.ts';
import { isoDate, mondayOf, weekdayOf } from '../../../src/domain/programme/calendar.ts';
import { dayOf } from '../../../src/domain/programme/dates.ts';
import { at, did, followed, HERON, names, now, on, situation, twice, UNDATED } from './people.ts';

describe('weeks of the calendar', () => {
  it.each([
    // ISO 8601 week dates, as Python's date.isocalendar gives them.
    ['2005-01-01', 2004, 53, 6],
    ['2008-12-29', 2009, 1, 1],
    ['2020-12-31', 2020, 53, 4],
    ['2021-01-01', 2020, 53, 5],
    ['2026-12-31', 2026, 53, 4],
  ])('NOW-1 %s is in the ISO week %i-W%i, day %i', (date, year, week, weekday) => {
    const day = dayOf(date) ?? Number.NaN;
    expect(weekdayOf(day)).toBe(weekday);
    // A week belongs to the year of its Thursday, and counts from the one with 4 January in it.
    const monday = mondayOf(day);
    expect(isoDate(monday + 3).slice(0, 4)).toBe(String(year));
    const first = mondayOf(dayOf(`${year}-01-04`) ?? Number.NaN);
    expect((monday - first) / 7 + 1).toBe(week);
  });

  it('NOW-1 a session counts in the week of its local date, nine time zones away too', () => {
    // Sunday 14 March, 23:30 in London, and the same moment at UTC+9, where it is Monday.
    const utc = Date.UTC(2027, 2, 14, 23, 30);
    const of = (offsetMinutes: number) => ({
      ...did({ date: localDate(utc, offsetMinutes), week: 2 }),
      startedAt: utc,
      offsetMinutes,
    });
    const count = (offset: number, today: string) =>
      nowOf(situation(today, [did(at(1, 2)), of(offset)])).count.done;
    expect([count(0, on(2, 7)), count(0, on(3, 1))]).toEqual([1, 0]);
    expect([count(540, on(2, 7)), count(540, on(3, 1))]).toEqual([0, 1]);
  });

  it('NOW-1 the week of a day is the programme’s, Monday to Sunday', () => {
    const weeks = [1, 2, 3, 4, 5, 6].flatMap((week) =>
      [1, 4, 7].map((weekday) => now(on(week, weekday), twice(1, 2, 3, 4, 5)).week === week),
    );
    expect(weeks).toEqual(Array(18).fill(true));
  });
});

describe('what is next', () => {
  it('NOW-2 is the first session of the week, then the second, with its length, target and focus', () => {
    expect(now(on(2, 1), twice(1)).next).toMatchObject({
      week: 2,
      session: 1,
      // 5 + 6 x (3 + 1) + 5 min.
      length: 34 * 60_000,
      target: 50,
      focus: 'Talk as you go. Whole sentences mean the pace is right.',
      together: true,
      need: 'due',
      from: on(2, 1),
    });
    const second = now(on(2, 4), [...twice(1), at(2, 2)]).next;
    expect(second).toMatchObject({ week: 2, session: 2, need: 'due', together: false });
  });

  it('NOW-2 is one more when the week has enough, and the next Monday’s when it is full', () => {
    expect(now(on(2, 7), twice(1, 2)).next).toMatchObject({ week: 2, session: 3, need: 'extra' });
    const full = now(on(2, 7), [...twice(1, 2), at(2, 7, 3)]);
    expect(full.next).toMatchObject({ week: 3, session: 1, need: 'later', from: on(3, 1) });
    expect(full.count.is).toBe('full');
  });

  it('NOW-2 never asks for what was left out in weeks before', () => {
    expect(now(on(3, 1), [...twice(1), at(2, 3)]).next).toMatchObject({ week: 3, session: 1 });
  });

  it('NOW-2 takes sessions done out of order as done', () => {
    const done = [...twice(1), at(2, 2, 2)];
    expect(now(on(2, 4), done).next).toMatchObject({ week: 2, session: 1 });
    expect(now(on(2, 7), [...done, at(2, 5, 1)]).next).toMatchObject({ session: 3 });
  });

  it('NOW-2 is nothing when all weeks lie behind, and before the start the first', () => {
    expect(now(on(7, 1), twice(1, 2, 3, 4, 5, 6))).toMatchObject({ stage: 'through', week: 6 });
    expect(now(on(7, 1), twice(1, 2, 3, 4, 5, 6)).next).toBeUndefined();
    const before = now(on(0, 4));
    expect(before).toMatchObject({ stage: 'before', start: { date: on(1, 1), days: 4 } });
    expect(before.next).toMatchObject({ week: 1, session: 1, need: 'later', from: on(1, 1) });
  });

  it('NOW-3 counts every session of the week that was done, against the leader’s times', () => {
    expect(now(on(3, 6), [...twice(1, 2), at(3, 1), { ...at(3, 3), week: 1 }]).count).toEqual({
      done: 2,
      min: 2,
      max: 3,
      is: 'enough',
    });
    expect(now(on(3, 6), twice(1, 2)).count).toMatchObject({ done: 0, is: 'none' });
  });

  it('NOW-3 counts one that ended early from half of its plan on', () => {
    const cut = (done: number) => now(on(1, 3), [{ ...at(1, 2), done }]).count.done;
    expect([49, 50].map(cut)).toEqual([0, 1]);
    // A session that is no longer in the programme counts from ten minutes.
    const gone = (seconds: number) =>
      nowOf(
        situation(on(1, 3), [
          {
            ...did({ ...at(1, 2), done: 10 }),
            plan: '1 h walk',
            doneSeconds: seconds,
          },
        ]),
      ).count.done;
    expect([599, 600].map(gone)).toEqual([0, 1]);
  });

  it('NOW-3 leaves out what is dated after today, and other programmes', () => {
    const other = { ...UNDATED, id: 'other' };
    const done = [at(2, 2), at(2, 6), { ...at(2, 1), programme: other }];
    expect(now(on(2, 3), [...twice(1), ...done]).count.done).toBe(1);
  });
});

describe('the programme at a glance', () => {
  it('NOW-4 each week is done, partly done, missed, now or coming, on the leader’s dates', () => {
    const done = [...twice(1), at(2, 3), ...twice(4).slice(0, 1)];
    const { weeks } = now(on(4, 3), done);
    expect(weeks.map(({ name }) => name)).toEqual([
      'done',
      'part',
      'missed',
      'now',
      'coming',
      'coming',
    ]);
    expect(weeks.map(({ dates }) => dates?.from)).toEqual([1, 2, 3, 4, 5, 6].map((w) => on(w, 1)));
    expect(weeks[5]?.dates?.to).toBe(HERON.goal.date);
    expect(weeks[1]).toMatchObject({ times: 1, sessions: [true, false, false] });
  });

  it('NOW-4 a week that was mostly a pause was not missed', () => {
    const pauses = [{ from: on(2, 1), to: on(2, 4), why: 'holiday' as const }];
    const following = followed({ pauses });
    const done = [...twice(1), at(3, 1)];
    expect(names(on(3, 2), done, { following })[1]).toBe('paused');
    const short = followed({ pauses: [{ from: on(2, 1), to: on(2, 3), why: 'holiday' }] });
    expect(names(on(3, 2), done, { following: short })[1]).toBe('missed');
  });

  it('NOW-4 weeks on a person’s own dates follow their own Monday', () => {
    const following = followed({ startedOn: on(3, 1) });
    const { weeks, week } = now(on(4, 2), [{ date: on(3, 2), week: 1 }], { following });
    expect(week).toBe(2);
    expect(weeks[0]).toMatchObject({ name: 'part', dates: { from: on(3, 1) } });
    expect(weeks[1]).toMatchObject({ name: 'now', dates: { from: on(4, 1) } });
  });
});

describe('starting', () => {
  it('NOW-5 without dates week 1 is the week of the first session', () => {
    const part = { programme: UNDATED };
    expect(now(on(3, 3), [], part)).toMatchObject({ stage: 'under-way', week: 1 });
    const done = [{ date: on(3, 4), week: 1, programme: UNDATED }];
    expect(now(on(4, 1), done, part)).toMatchObject({ week: 2 });
    expect(now(on(4, 1), done, part).event).toBeUndefined();
  });

  it('NOW-5 who begins late begins at week 1, and is told what would lie past the event', () => {
    // From week 3, six weeks end two weeks after the event.
    const late = now(on(3, 2));
    expect(late).toMatchObject({ stage: 'late', week: 1, late: { week: 3, over: 2 } });
    expect(late.next).toMatchObject({ week: 1, session: 1, need: 'due', from: on(3, 2) });
    expect(names(on(3, 2), [])).toEqual(['now', ...Array(5).fill('coming')]);
  });

  it('NOW-5 behind a start of their own nobody is late', () => {
    const following = followed({ startedOn: on(2, 1) });
    const own = now(on(4, 2), [], { following });
    expect(own).toMatchObject({ stage: 'under-way', week: 1, next: { week: 1, need: 'due' } });
    expect(own.late).toBeUndefined();
  });

  it('NOW-5 their first session says which week is theirs from then on', () => {
    const done = [{ date: on(3, 3), week: 1 }];
    expect(now(on(3, 5), done)).toMatchObject({ stage: 'under-way', week: 1 });
    expect(now(on(4, 1), done).week).toBe(2);
    // Joining the others in their week is a choice too.
    expect(now(on(4, 1), [{ date: on(3, 3), week: 3 }]).week).toBe(4);
    expect(names(on(4, 1), [{ date: on(3, 3), week: 3 }]).slice(0, 3)).toEqual([
      'passed',
      'passed',
      'part',
    ]);
  });
});
