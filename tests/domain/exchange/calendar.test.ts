import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import {
  type CalendarEvent,
  eventUid,
  sessionUid,
  toCalendar,
} from '../../../src/domain/exchange/calendar.ts';
import { calendarStart } from '../../../src/domain/exchange/calendar-start.ts';
import { durationText, escapeText, foldLine } from '../../../src/domain/exchange/content-line.ts';
import { isoWeek, isoWeekText } from '../../../src/domain/exchange/iso-week.ts';
import { type PlanWish, plannedSessions } from '../../../src/domain/exchange/planned.ts';
import { isoDate } from '../../../src/domain/programme/calendar.ts';
import { dayOf } from '../../../src/domain/programme/dates.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { marshProgramme } from '../../drivers/exchange/programmes.ts';
import { did, followed, HERON, on, situation, UNDATED } from '../advice/people.ts';

/*
 * Read back by ical.js, which shares no code with us. Rows 11a to 11f are examples of RFC 5545
 * (3.8.5.3 and 3.3.6) or were worked with two other implementations.
 */

const STAMP = Date.UTC(2027, 1, 20, 18, 30);

const programmeOf = (weeks: number, goal: object = {}) => {
  const file = marshProgramme(weeks) as { goal: object };
  const read = readProgramme(JSON.stringify({ ...file, goal: { ...file.goal, ...goal } }));
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};

/** Nine weeks of three sessions or fewer, however many are asked for; the event far away. */
const wish = (more: Partial<PlanWish> = {}): PlanWish => ({
  programme: programmeOf(12, { date: '2099-01-01' }),
  group: 'swift',
  anchor: { monday: '2027-03-01', week: 1 },
  days: [2, 4],
  from: '0000-01-01',
  pauses: [],
  done: new Set(),
  ...more,
});

const events = (wished: PlanWish, minutes = 540, alarm = 30): readonly CalendarEvent[] =>
  plannedSessions(wished).map(({ date, week, session, text, seconds }) => ({
    uid: sessionUid(wished.programme.id, week, session),
    date,
    summary: `Week ${week}, session ${session}`,
    description: text,
    at: { minutes, seconds, alarm: { minutesBefore: alarm, words: 'Time to go out' } },
  }));

const opened = (text: string): ICAL.Component => new ICAL.Component(ICAL.parse(text));
const read = (text: string): readonly ICAL.Event[] =>
  opened(text)
    .getAllSubcomponents('vevent')
    .map((component) => new ICAL.Event(component));

/** Every day of a rule, as another implementation of RFC 5545 counts it. */
function daysOfRule(start: string, rule: string): readonly string[] {
  const days: string[] = [];
  const turns = ICAL.Recur.fromString(rule).iterator(ICAL.Time.fromDateTimeString(start));
  for (let at = turns.next(); at !== null && at !== undefined; at = turns.next())
    days.push(at.toString());
  return days;
}

const starts = (list: readonly ICAL.Event[]): readonly string[] =>
  list.map(({ startDate }) => startDate.toString());

describe('sessions on days', () => {
  it('REC-1 Tuesdays and Thursdays fall where RFC 5545 puts ten of them (its example, 1997)', () => {
    const rule = 'FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH';
    const expected = daysOfRule('1997-09-02T09:00:00', rule);
    // 11a, as the RFC prints it.
    expect(expected.map((day) => day.slice(5, 10))).toEqual([
      '09-02',
      '09-04',
      '09-09',
      '09-11',
      '09-16',
      '09-18',
      '09-23',
      '09-25',
      '09-30',
      '10-02',
    ]);
    const anchor = { monday: '1997-09-01', week: 1 };
    const planned = wish({ programme: programmeOf(5, { date: '2099-01-01' }), anchor });
    // Week 3 of this programme has one plan for this group, so two a week are there to be planned.
    expect(starts(read(toCalendar(events(planned), STAMP)))).toEqual(expected);
  });

  it('REC-1 three days a week for nine weeks end on the 27th day of the rule (11e)', () => {
    const rule = 'FREQ=WEEKLY;COUNT=27;BYDAY=MO,WE,FR';
    const expected = daysOfRule('2026-01-05T09:00:00', rule);
    expect(expected.at(-1)).toBe('2026-03-06T09:00:00');
    const planned = wish({
      programme: programmeOf(9, { date: '2099-01-01' }),
      anchor: { monday: '2026-01-05', week: 1 },
      days: [5, 1, 3, 3],
    });
    expect(starts(read(toCalendar(events(planned), STAMP)))).toEqual(expected);
  });

  /** Away every second week from this Monday's on, Monday to Sunday. */
  const everySecond = (monday: string, weeks: number): PlanWish['pauses'] =>
    Array.from({ length: weeks }, (_, n) => {
      const from = (dayOf(monday) ?? 0) + 14 * n;
      return { from: isoDate(from), to: isoDate(from + 6), why: 'holiday' };
    });

  it('REC-1 for somebody away every second week they fall where the rule for every second week puts them (11b, 11c)', () => {
    // 11b, as the RFC prints it: Tuesdays and Thursdays.
    const b = daysOfRule(
      '1997-09-02T09:00:00',
      'FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH',
    );
    expect(b.map((day) => day.slice(5, 10)).join(' ')).toBe(
      '09-02 09-04 09-16 09-18 09-30 10-02 10-14 10-16',
    );
    const inTurn = wish({
      programme: programmeOf(8, { date: '2099-01-01' }),
      anchor: { monday: '1997-09-01', week: 1 },
      pauses: everySecond('1997-09-08', 4),
    });
    expect(starts(read(toCalendar(events(inTurn), STAMP)))).toEqual(b);

    // 11c: with Sundays it shows on which day a week begins. Ours begin on Monday.
    const [monday, sunday] = ['MO', 'SU'].map((first) =>
      daysOfRule('1997-08-05T09:00:00', `FREQ=WEEKLY;INTERVAL=2;COUNT=4;WKST=${first};BYDAY=TU,SU`),
    );
    expect(monday?.map((day) => day.slice(5, 10)).join(' ')).toBe('08-05 08-10 08-19 08-24');
    expect(sunday?.map((day) => day.slice(5, 10)).join(' ')).toBe('08-05 08-17 08-19 08-31');
    const sundays = wish({
      programme: programmeOf(4, { date: '2099-01-01' }),
      anchor: { monday: '1997-08-04', week: 1 },
      days: [2, 7],
      pauses: everySecond('1997-08-11', 2),
    });
    expect(starts(read(toCalendar(events(sundays), STAMP)))).toEqual(monday);
  });

  it('REC-1 never more a week than the leader wrote, none on the event’s day, before a day or in a pause', () => {
    const everyDay = wish({ days: [1, 2, 3, 4, 5, 6, 7] });
    const perWeek = new Map<number, number>();
    for (const { week } of plannedSessions(everyDay))
      perWeek.set(week, (perWeek.get(week) ?? 0) + 1);
    expect([...perWeek.values()]).toEqual(Array.from({ length: 12 }, () => 3));
    // Two plans in week 3 of Wren are two sessions.
    const wren = plannedSessions(wish({ group: 'wren', days: [1, 3, 5] }));
    expect(wren.filter(({ week }) => week === 3).map(({ session }) => session)).toEqual([1, 2]);
    const short = plannedSessions(
      wish({
        programme: programmeOf(4, { date: '2027-03-25' }),
        from: '2027-03-04',
        pauses: [{ from: '2027-03-09', to: '2027-03-11', why: 'illness' }],
      }),
    );
    expect(short.map(({ date, week, session }) => `${date} ${week}.${session}`)).toEqual([
      '2027-03-04 1.1',
      '2027-03-16 3.1',
      '2027-03-18 3.2',
      '2027-03-23 4.1',
    ]);
  });

  it('REC-1 what is done is not planned again, and what is left of its week moves up', () => {
    const days = plannedSessions(
      wish({ days: [1, 3, 5], from: '2027-03-02', done: new Set(['1.1', '2.2']) }),
    );
    expect(days.slice(0, 5).map(({ date, week, session }) => `${date} ${week}.${session}`)).toEqual(
      ['2027-03-03 1.2', '2027-03-05 1.3', '2027-03-08 2.1', '2027-03-10 2.3', '2027-03-15 3.1'],
    );
  });

  it('REC-1 on days of the week in their order, each once, and on nothing else', () => {
    const wished = plannedSessions(wish({ days: [5, 1, 3] }));
    expect(wished.slice(0, 3).map(({ date }) => date)).toEqual([
      '2027-03-01',
      '2027-03-03',
      '2027-03-05',
    ]);
    expect(plannedSessions(wish({ days: [0, 5, 1, 5, 1.5, 3, 8, -1] }))).toEqual(wished);
    for (const days of [[], [8], [0], [-1]]) expect(plannedSessions(wish({ days }))).toEqual([]);
    const nowhere = { monday: '2027-02-30', week: 1 };
    expect(plannedSessions(wish({ anchor: nowhere }))).toEqual([]);
  });

  it('REC-1 on two days only the first two of a week, also when one of them is done', () => {
    const days = plannedSessions(wish({ days: [2, 4], done: new Set(['1.1']) }));
    expect(days.slice(0, 3).map(({ week, session }) => `${week}.${session}`)).toEqual([
      '1.2',
      '2.1',
      '2.2',
    ]);
  });

  it('REC-1 a pause that is open goes on, and without an event all weeks are planned', () => {
    const paused = plannedSessions(wish({ pauses: [{ from: '2027-03-09', why: 'holiday' }] }));
    expect(paused.map(({ date }) => date).filter((date) => date >= '2027-03-09')).toEqual([]);
    expect(paused).not.toEqual([]);
    const programme = programmeOf(4, { date: undefined });
    expect(programme.goal.date).toBeUndefined();
    expect(new Set(plannedSessions(wish({ programme })).map(({ week }) => week)).size).toBe(4);
  });

  it('REC-1 a week of the person’s own is counted from its Monday', () => {
    const late = plannedSessions(wish({ anchor: { monday: '2027-04-05', week: 11 }, days: [7] }));
    expect(late.map(({ date, week }) => [date, week])).toEqual([
      ['2027-04-11', 11],
      ['2027-04-18', 12],
    ]);
  });
});

describe('an iCalendar file', () => {
  it('REC-2 another reader finds the same names, days, lengths and words in it', () => {
    const planned = events(wish());
    const found = read(toCalendar(planned, STAMP));
    expect(found).toHaveLength(planned.length);
    planned.forEach((event, n) => {
      const there = found[n];
      expect(there?.uid).toBe(event.uid);
      expect(there?.summary).toBe(event.summary);
      expect(there?.description).toBe(event.description);
      expect(there?.duration.toSeconds()).toBe(event.at?.seconds);
      expect(there?.startDate.toString()).toBe(`${event.date}T09:00:00`);
      expect(there?.component.getFirstPropertyValue('dtstamp')?.toString()).toBe(
        '2027-02-20T18:30:00Z',
      );
    });
  });

  it('REC-3 the time is local and without a zone: nine is nine on both sides of a clock change (11d)', () => {
    // Every day at nine until Christmas: 113 times, the last on the 23rd, by the RFC’s own example.
    const rule = 'FREQ=DAILY;UNTIL=19971224T000000';
    const expected = daysOfRule('1997-09-02T09:00:00', rule);
    expect([expected.length, expected.at(-1)]).toEqual([113, '1997-12-23T09:00:00']);
    const first = dayOf('1997-09-02') ?? 0;
    const daily = expected.map(
      (_, n): CalendarEvent => ({
        uid: `${n}`,
        date: isoDate(first + n),
        summary: 'x',
        description: '',
        at: { minutes: 540, seconds: 1860 },
      }),
    );
    const found = read(toCalendar(daily, STAMP));
    expect(starts(found)).toEqual(expected);
    for (const { startDate } of found) expect(startDate.zone).toBe(ICAL.Timezone.localTimezone);
    expect(toCalendar(daily, STAMP)).not.toMatch(/TZID|DTSTART[^\r]*Z\r/);
  });

  it('REC-4 a session keeps its name when day, time and programme change, and the newer file its higher number', () => {
    const later = STAMP + 60_000;
    const [old, moved] = [
      read(toCalendar(events(wish()), STAMP)),
      read(toCalendar(events(wish({ days: [3, 6] }), 1110), later)),
    ];
    expect(moved.map(({ uid }) => uid)).toEqual(old.map(({ uid }) => uid));
    expect(new Set(old.map(({ uid }) => uid)).size).toBe(old.length);
    expect(moved[0]?.startDate.toString()).toBe('2027-03-03T18:30:00');
    for (const [n, { sequence }] of old.entries())
      expect(moved[n]?.sequence).toBeGreaterThan(sequence);
    // RFC 5545, 3.3.8: an integer of 32 bits.
    expect(Math.max(...old.map(({ sequence }) => sequence))).toBeLessThan(2 ** 31);
    expect(sessionUid('heron', 1, 12)).not.toBe(sessionUid('heron', 11, 2));
    expect(eventUid('heron')).not.toBe(eventUid('heron.2'));
  });

  it('REC-5 an alarm is shown before its session, with its words', () => {
    for (const minutes of [0, 15, 90, 1440]) {
      const [event] = read(toCalendar(events(wish(), 540, minutes), STAMP));
      const alarm = event?.component.getFirstSubcomponent('valarm');
      expect(alarm?.getFirstPropertyValue('action')).toBe('DISPLAY');
      expect(alarm?.getFirstPropertyValue('description')).toBe('Time to go out');
      const trigger = alarm?.getFirstPropertyValue('trigger') as ICAL.Duration;
      expect(trigger.toSeconds()).toBe(-60 * minutes || 0);
    }
    const silent = toCalendar(
      [
        {
          uid: 'u',
          date: '2027-03-01',
          summary: 's',
          description: '',
          at: { minutes: 0, seconds: 60 },
        },
      ],
      STAMP,
    );
    expect(silent).not.toContain('VALARM');
  });

  it('REC-5 a length is read back as it was, and as RFC 5545 writes it (11f)', () => {
    const seconds = (text: string) => ICAL.Duration.fromString(text).toSeconds();
    expect(['PT1H30M', '-PT15M', 'P15DT5H0M20S', 'P7W'].map(seconds)).toEqual([
      5400, -900, 1_314_020, 4_233_600,
    ]);
    expect([5400, -900, 0, 3605, 1860].map(durationText)).toEqual([
      'PT1H30M',
      '-PT15M',
      'PT0S',
      'PT1H0M5S',
      'PT31M',
    ]);
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (n) => {
        expect(seconds(durationText(n))).toBe(n);
      }),
    );
  });

  it('REC-1 before the first week planning begins with its Monday, without dates in the week of today', () => {
    const start = (programme: typeof HERON, today: string) =>
      calendarStart({ programme, group: 'curlew', entries: [], today });
    const done = new Set();
    expect(start(HERON, on(0, 3))).toEqual({ anchor: { monday: on(1, 1), week: 1 }, done });
    expect(start(UNDATED, on(3, 4))).toEqual({ anchor: { monday: on(3, 1), week: 1 }, done });
  });

  it('REC-1 planning goes on in the week that is theirs, without what they have done of it', () => {
    const entries = [
      did({ date: on(1, 2), week: 1, session: 1 }),
      did({ date: on(1, 4), week: 1, session: 2 }),
      did({ date: on(2, 2), week: 2, session: 1 }),
    ];
    expect(calendarStart(situation(on(2, 3), entries))).toEqual({
      anchor: { monday: on(2, 1), week: 2 },
      done: new Set(['1.1', '1.2', '2.1']),
    });
  });

  it('REC-1 a week that is gone through again is planned again: only what is done of it since counts', () => {
    const before = [
      did({ date: on(1, 2), week: 1, session: 1 }),
      did({ date: on(1, 4), week: 1, session: 2 }),
    ];
    const decisions = [{ on: on(2, 1), week: 1, group: 'curlew', why: 'repeat' }] as const;
    const start = (since: typeof before) =>
      calendarStart(
        situation(on(2, 4), [...before, ...since], { following: followed({ decisions }) }),
      );
    expect(start([])).toEqual({ anchor: { monday: on(2, 1), week: 1 }, done: new Set() });
    // On the day of the decision it is done of the week as it is gone through now.
    for (const day of [1, 3])
      expect(start([did({ date: on(2, day), week: 1, session: 1 })]).done).toEqual(
        new Set(['1.1']),
      );
  });

  it('REC-2 a whole day ends with the next one and counts by the Gregorian calendar, in so many words (3.6.1, 3.7.1)', () => {
    const day = { uid: 'x', date: '2028-02-28', summary: 'Heron Loop', description: '' };
    const lines = toCalendar([day], STAMP).split('\r\n');
    expect(lines).toContain('CALSCALE:GREGORIAN');
    expect(lines).toContain('DTSTART;VALUE=DATE:20280228');
    expect(lines).toContain('DTEND;VALUE=DATE:20280229');
  });

  it('REC-2 a file says its version and who made it, as RFC 5545 asks (3.7.3, 3.7.4)', () => {
    const lines = toCalendar([], STAMP).split('\r\n');
    expect(lines[0]).toBe('BEGIN:VCALENDAR');
    expect(lines).toContain('VERSION:2.0');
    expect(lines.filter((line) => /^PRODID:.+/.test(line))).toHaveLength(1);
  });

  it('REC-6 half of a surrogate pair is told as a sign that is missing', () => {
    expect(escapeText('a\ud800b\udfffc')).toBe('a\ufffdb\ufffdc');
  });

  it('REC-6 a line’s end of whatever kind is the one that a calendar knows (RFC 5545, 3.3.11)', () => {
    const ends = ['\n', '\r\n', '\r', '\u2028', '\u2029'];
    for (const end of ends) expect(escapeText(`one${end}two`)).toBe('one\\ntwo');
  });

  it('REC-2 the event itself is a whole day that makes nobody busy', () => {
    const uid = eventUid('heron-loop-spring');
    const text = toCalendar(
      [{ uid, date: '2027-12-31', summary: 'Heron Loop', description: '' }],
      STAMP,
    );
    const [event] = read(text);
    expect(event?.startDate.isDate).toBe(true);
    expect([event?.startDate.toString(), event?.endDate.toString()]).toEqual([
      '2027-12-31',
      '2028-01-01',
    ]);
    expect(text).toContain('TRANSP:TRANSPARENT');
  });
});

describe('content lines', () => {
  const texts = fc.string({ unit: 'binary', maxLength: 300 });

  it('REC-6 no line has more than 75 octets, none cuts a sign, and unfolding gives the line back', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const line = `SUMMARY:${escapeText(text)}`;
        const folded = foldLine(line);
        expect(folded.endsWith('\r\n')).toBe(true);
        for (const part of folded.slice(0, -2).split('\r\n')) {
          expect(Buffer.byteLength(part, 'utf8')).toBeLessThanOrEqual(75);
          expect(Buffer.from(part, 'utf8').toString('utf8')).toBe(part);
        }
        // Unfolding as section 3.1 says it: a line break and the one space behind it go.
        expect(folded.slice(0, -2).replace(/\r\n /g, '')).toBe(line);
      }),
    );
  });

  it('REC-6 a line of exactly 75 octets is not cut, and one of 76 is', () => {
    expect(foldLine('x'.repeat(75))).toBe(`${'x'.repeat(75)}\r\n`);
    expect(foldLine('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x\r\n`);
    expect(foldLine(`${'x'.repeat(74)}é`)).toBe(`${'x'.repeat(74)}\r\n é\r\n`);
  });

  it('REC-6 commas, semicolons, backslashes and line breaks come back from another reader', () => {
    // RFC 5545, 3.3.11, prints this one.
    expect(escapeText('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
    );
    fc.assert(
      fc.property(texts, (text) => {
        const made = toCalendar(
          [{ uid: 'u', date: '2027-03-01', summary: text, description: 'd' }],
          STAMP,
        );
        const shown = text
          .replace(/\r\n?|[\u2028\u2029]/g, '\n')
          .replace(/[^\P{Cc}\n\t]/gu, '')
          .replace(
            /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g,
            '\ufffd',
          );
        expect(read(made)[0]?.summary ?? '').toBe(shown);
        expect(read(made)[0]?.description).toBe('d');
        expect(made).not.toMatch(/[^\r]\n|\r[^\n]/);
      }),
    );
  });
});

describe('weeks by their number', () => {
  it('REC-15 agree with worked dates at the ends of years (Python’s isocalendar)', () => {
    const rows: readonly (readonly [string, string, number])[] = [
      ['0999-01-01', '0999-W01', 2],
      ['0999-12-31', '1000-W01', 2],
      ['2005-01-01', '2004-W53', 6],
      ['2008-12-29', '2009-W01', 1],
      ['2020-12-31', '2020-W53', 4],
      ['2021-01-01', '2020-W53', 5],
      ['2026-12-31', '2026-W53', 4],
    ];
    for (const [date, text, weekday] of rows)
      expect([isoWeekText(date), isoWeek(date)?.weekday]).toEqual([text, weekday]);
    expect(isoWeek('2027-02-30')).toBeUndefined();
    expect(isoWeekText('soon')).toBe('');
  });

  it('REC-15 agree with ical.js on every day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_000, max: 60_000 }), (day) => {
        const date = isoDate(day);
        const found = isoWeek(date);
        expect(found?.week).toBe(ICAL.Time.fromDateString(date).weekNumber(ICAL.Time.MONDAY));
      }),
    );
  });
});
