import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countLine,
  eventLine,
  lateLine,
  missedLine,
  pauseLine,
  reEntryLine,
  restLine,
} from '../../../src/copy/now.ts';
import { reEntryWeek } from '../../../src/domain/advice/course.ts';
import { isoDate, mondayOf, weekdayOf } from '../../../src/domain/advice/days.ts';
import { nowOf } from '../../../src/domain/advice/now.ts';
import type { Situation } from '../../../src/domain/advice/situation.ts';
import { whichOf } from '../../../src/domain/advice/which.ts';
import { localDate } from '../../../src/domain/log/local-date.ts';
import { dayOf } from '../../../src/domain/programme/dates.ts';
import { historyArb } from './histories.ts';
import { type Did, did, followed, HERON, on, situation, UNDATED } from './people.ts';

const now = (today: string, done: readonly Did[] = [], part: Partial<Situation> = {}) =>
  nowOf(situation(today, done.map(did), part));

const at = (week: number, weekday: number, session = 1): Did => ({
  date: on(week, weekday),
  week,
  session,
});
/** The first two sessions of weeks, on Tuesday and Friday. */
const twice = (...weeks: readonly number[]): readonly Did[] =>
  weeks.flatMap((week) => [at(week, 2, 1), at(week, 5, 2)]);

const names = (today: string, done: readonly Did[], part: Partial<Situation> = {}) =>
  now(today, done, part).weeks.map(({ name }) => name);

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

describe('rest', () => {
  const hard = (week: number, weekday: number): Did => ({
    ...at(week, weekday),
    feeling: { effort: 7 },
  });

  it('NOW-6 two hard days running get a word, and the next session is from the day after', () => {
    // Vigorous from 7 of 10: US Physical Activity Guidelines 2018, appendix 1.
    expect(now(on(2, 4), [hard(2, 2), hard(2, 3)]).rest).toEqual({
      code: 'two-hard',
      until: on(2, 5),
    });
    expect(now(on(2, 4), [hard(2, 3), hard(2, 4)]).rest).toEqual({
      code: 'two-hard',
      until: on(2, 6),
    });
    expect(now(on(2, 4), [hard(2, 2), hard(2, 3)]).next?.from).toBe(on(2, 5));
    expect(now(on(2, 5), [hard(2, 2), hard(2, 3)]).rest).toBeUndefined();
  });

  it('NOW-6 easier sessions on days running get a lighter one, a day apart none', () => {
    expect(now(on(2, 4), [at(2, 2), at(2, 3)]).rest?.code).toBe('two-days');
    expect(now(on(2, 4), [at(2, 1), at(2, 3)]).rest).toBeUndefined();
    expect(now(on(2, 4), [at(2, 4)]).rest).toEqual({ code: 'today', until: on(2, 5) });
  });

  it('NOW-6 legs do not tell programmes apart, and the way of rating is the person’s own', () => {
    const other = { ...UNDATED, id: 'other' };
    expect(now(on(2, 4), [hard(2, 2), { ...hard(2, 3), programme: other }]).rest?.code).toBe(
      'two-hard',
    );
    const both = [2, 3].map((day) =>
      did({ ...at(2, day), feeling: { effort: 7, effortLater: 6 } }),
    );
    expect(nowOf(situation(on(2, 4), both), 'at-the-end').rest?.code).toBe('two-hard');
    expect(nowOf(situation(on(2, 4), both), 'later').rest?.code).toBe('two-days');
  });
});

describe('missed days', () => {
  it('NOW-7 a thin week is met with what still fits, never with what is owed', () => {
    expect(now(on(3, 1), [...twice(1), at(2, 3)]).missed).toEqual({
      what: 'last-week',
      done: 1,
      min: 2,
      fits: 3,
    });
    expect(now(on(3, 1), twice(1, 2)).missed).toBeUndefined();
    // Saturday, nothing done: one session fits with a day between, on Saturday.
    expect(now(on(3, 6), twice(1, 2)).missed).toEqual({
      what: 'this-week',
      done: 0,
      min: 2,
      fits: 1,
    });
  });

  it('NOW-7 who began late in a week is not asked where the rest of it is', () => {
    expect(now(on(2, 1), [at(1, 4)]).missed).toBeUndefined();
    expect(now(on(2, 1), [at(1, 3)]).missed?.what).toBe('last-week');
    expect(now(on(1, 7), [at(1, 7)]).missed).toBeUndefined();
  });

  it('NOW-7 the sentences never speak of a streak, of failing or of what has to be caught up', () => {
    for (const what of ['last-week', 'this-week'] as const)
      for (const [done, fits] of [
        [0, 0],
        [1, 1],
        [0, 3],
      ] as const) {
        const line = missedLine({ what, done, min: 2, fits });
        expect(line).toMatch(/^[A-Z].*\.$/);
        expect(line).not.toMatch(/streak|fail|behind|catch up|should have|lost|!/i);
      }
  });
});

describe('coming back', () => {
  it.each([
    // The rule by hand, common practice, no source: a week back for every seven days begun after
    // the first seven; an illness one more.
    [7, false, 5],
    [8, false, 4],
    [14, false, 4],
    [15, false, 3],
    [28, false, 2],
    [60, false, 1],
    [7, true, 4],
    [14, true, 3],
  ])(
    'NOW-8 after %i days away (ill: %s), from week 5 one comes back in week %i',
    (days, ill, week) => {
      expect(reEntryWeek(5, days, ill)).toBe(week);
    },
  );

  it('NOW-8 longer away never leads to a later week, being ill never either', () => {
    const days = fc.integer({ min: 0, max: 400 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 52 }), days, days, (next, a, b) => {
        const week = (n: number, ill: boolean) => reEntryWeek(next, n, ill);
        expect(week(Math.max(a, b), false)).toBeLessThanOrEqual(week(Math.min(a, b), false));
        expect(week(a, true)).toBeLessThanOrEqual(week(a, false));
        expect(week(a, false)).toBeGreaterThanOrEqual(1);
        expect(week(a, false)).toBeLessThanOrEqual(next);
      }),
    );
  });

  it('NOW-8 days missed without a word are met the same way, and the first session back decides', () => {
    // Weeks 1 and 2 done, the last session on Friday of week 2; back on Monday of week 5: 16 days
    // without a session, two weeks back from week 3.
    const back = now(on(5, 1), twice(1, 2));
    expect(back.reEntry).toEqual({ week: 1, days: 16, back: 2, why: 'gap' });
    expect(back.next).toMatchObject({ week: 1, session: 1, need: 'due' });
    // They take week 2 instead: that is theirs, and week 3 is the next.
    const done = [...twice(1, 2), { date: on(5, 1), week: 2 }];
    expect(now(on(5, 3), done)).toMatchObject({ week: 2, next: { week: 2, session: 2 } });
    expect(now(on(5, 3), done).reEntry).toBeUndefined();
    expect(now(on(6, 1), done).week).toBe(3);
  });

  it('NOW-8 a holiday of a week that was spent at rest repeats the last week', () => {
    const following = followed({
      pauses: [{ from: on(3, 1), to: on(3, 7), why: 'holiday' }],
    });
    // Last session Friday of week 2; on Monday of week 4 nine days are over.
    const back = now(on(4, 1), twice(1, 2), { following });
    expect(back.reEntry).toEqual({ week: 2, days: 9, back: 1, why: 'holiday' });
  });

  it('NOW-8 three days of illness take a week back, two do not', () => {
    const ill = (days: number) =>
      followed({ pauses: [{ from: on(3, 1), to: on(3, days), why: 'illness' }] });
    expect(now(on(3, 4), twice(1, 2), { following: ill(2) }).reEntry).toBeUndefined();
    expect(now(on(3, 4), twice(1, 2), { following: ill(3) })).toMatchObject({
      week: 2,
      reEntry: { week: 2, back: 1, why: 'illness' },
    });
  });

  it('NOW-8 in the week of the event, which is lighter anyway, two weeks away change nothing', () => {
    expect(now(on(6, 7), twice(1, 2, 3, 4, 5)).reEntry).toBeUndefined();
    expect(now(on(6, 6), twice(1, 2, 3, 4)).reEntry).toBeUndefined();
    expect(now(on(6, 7), twice(1, 2, 3, 4)).reEntry).toMatchObject({ days: 15 });
  });

  it('NOW-9 in a pause the programme waits, and says why', () => {
    const following = followed({ pauses: [{ from: on(3, 1), why: 'illness' }] });
    expect(now(on(3, 3), twice(1, 2), { following })).toMatchObject({
      stage: 'paused',
      pause: { from: on(3, 1), why: 'illness' },
    });
    expect(now(on(3, 3), twice(1, 2), { following }).missed).toBeUndefined();
    expect(now(on(3, 3), twice(1, 2), { following }).reEntry).toBeUndefined();
    const until = followed({ pauses: [{ from: on(3, 1), to: on(3, 4), why: 'holiday' }] });
    expect(now(on(3, 3), twice(1, 2), { following: until }).next).toMatchObject({
      need: 'later',
      from: on(3, 5),
    });
    const over = followed({ pauses: [{ from: on(3, 1), to: on(3, 2), why: 'other' }] });
    expect(now(on(3, 3), twice(1, 2), { following: over }).stage).toBe('under-way');
  });
});

describe('the event, several programmes, decisions', () => {
  it('NOW-10 days to the event are days of the calendar', () => {
    // From 1 March to 11 April 2027: 30 days left in March, and 11.
    expect(now('2027-03-01').event).toEqual({ date: '2027-04-11', days: 41 });
    expect(now('2027-04-11').event?.days).toBe(0);
    expect(now('2027-04-12').event?.days).toBe(-1);
  });

  it('NOW-11 of several programmes it asks when more than one is open today', () => {
    const open = { programmeId: 'a', now: now(on(2, 1), twice(1)) };
    const late = { programmeId: 'b', now: now(on(3, 1)) };
    const over = { programmeId: 'c', now: now(on(7, 1), twice(1, 2, 3, 4, 5, 6)) };
    expect(whichOf([over, late, open])).toEqual({ ask: true, order: [open, late, over] });
    expect(whichOf([over, open]).ask).toBe(false);
    expect(whichOf([]).ask).toBe(false);
  });

  it('NOW-12 what was decided holds from its day, on the leader’s dates or not', () => {
    const decisions = [{ on: on(3, 1), week: 2, group: 'curlew', why: 'repeat' as const }];
    const following = followed({ decisions });
    expect(now(on(3, 2), twice(1, 2), { following })).toMatchObject({
      week: 2,
      next: { week: 2, session: 1 },
    });
    expect(now(on(4, 1), [...twice(1, 2), { date: on(3, 2), week: 2 }], { following }).week).toBe(
      3,
    );
    // Decided on Saturday for Monday: told as what comes next, and its dates with it.
    const before = now(on(2, 6), [...twice(1, 2), at(2, 6, 3)], { following });
    expect(before.next).toMatchObject({ week: 2, session: 1, need: 'later', from: on(3, 1) });
    expect(before.weeks[2]?.dates?.from).toBe(on(4, 1));
  });

  it('NOW-12 another group in the same week keeps what was done of it', () => {
    const decisions = [{ on: on(2, 4), week: 2, group: 'dunlin', why: 'ease' as const }];
    const following = followed({ decisions });
    expect(
      now(on(2, 5), [...twice(1), at(2, 2)], { following, group: 'dunlin' }).next,
    ).toMatchObject({ week: 2, session: 2 });
  });

  it('NOW-13 a warning sign or a niggle that asks for rest is said before the next session', () => {
    const sign = [...twice(1), { ...at(2, 2), feeling: { warningSign: true } }];
    expect(now(on(2, 4), sign).care?.code).toBe('warning-sign');
    const knee = { niggle: { place: 'knee', severity: 2 } } as const;
    const twiceKnee = [...twice(1), { ...at(2, 2), feeling: knee }, { ...at(2, 4), feeling: knee }];
    expect(now(on(2, 6), twiceKnee).care?.code).toBe('niggle-back');
    const stopped = { niggle: { place: 'knee', severity: 3 } } as const;
    const rested = now(on(2, 3), [...twice(1), { ...at(2, 2), feeling: stopped }]);
    expect(rested).toMatchObject({ care: { code: 'niggle-stopped' }, next: { from: on(2, 6) } });
    expect(now(on(2, 6), twice(1, 2)).care).toBeUndefined();
  });

  it('NOW-14 holds for every history: a week of the programme, a session that is there, no order of the log', () => {
    fc.assert(
      fc.property(historyArb, fc.nat(), (history, seed) => {
        const made = nowOf(history);
        const { weeks } = history.programme;
        expect(made.week).toBeGreaterThanOrEqual(1);
        expect(made.week).toBeLessThanOrEqual(weeks.length);
        expect(made.weeks).toHaveLength(weeks.length);
        if (made.next === undefined) expect(made.stage).toBe('through');
        else {
          expect(made.next.from >= history.today).toBe(true);
          expect(made.next.length).toBeGreaterThan(0);
        }
        expect(made.weeks.filter(({ name }) => name === 'now').length).toBeLessThanOrEqual(1);
        const turn = seed % Math.max(1, history.entries.length);
        const entries = [...history.entries.slice(turn), ...history.entries.slice(0, turn)];
        expect(nowOf({ ...history, entries: entries.reverse() })).toEqual(made);
      }),
      { numRuns: 250 },
    );
  });

  it('NOW-14 every sentence is whole', () => {
    fc.assert(
      fc.property(historyArb, (history) => {
        const { count, event, rest, missed, pause, reEntry, late } = nowOf(history);
        const lines = [
          countLine(count),
          event && eventLine(event, 'Heron Loop'),
          rest && restLine(rest),
          missed && missedLine(missed),
          pause && pauseLine(pause),
          reEntry && reEntryLine(reEntry),
          late && lateLine(late, history.programme.weeks.length),
        ];
        for (const line of lines.filter((each) => each !== undefined)) {
          expect(line).toMatch(/^[A-Z0-9].*\.$/);
          expect(line).not.toMatch(/undefined|NaN|Infinity| {2}|\b1 (days|weeks|sessions)\b/);
        }
      }),
      { numRuns: 200 },
    );
  });
});
