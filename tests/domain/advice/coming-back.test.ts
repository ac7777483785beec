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
import { nowOf } from '../../../src/domain/advice/now.ts';
import { historyArb } from './histories.ts';
import { at, type Did, did, followed, now, on, situation, twice, UNDATED } from './people.ts';

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
