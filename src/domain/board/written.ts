import { RESPONSE_LIMITS } from '../exchange/response.ts';
import { firstForbidden } from '../programme/unseen.ts';
import { inOneLine } from '../workshop/one-line.ts';
import { type Attendance, attendanceKey } from './attendance.ts';
import { CAPACITY } from './capacity.ts';
import { type Heard, heardKey, type KnownOf } from './heard.ts';
import type { BoardSetup } from './setup.ts';

/*
 * What a leader writes, as the next state of a record. Each has the moment at which it was written,
 * and one that is later than what it takes the place of, also where this device's clock is behind.
 */

const after = (now: number, before: { readonly at: number } | undefined): number =>
  before === undefined ? now : Math.max(now, before.at + 1);

/** A name as it may be kept: one line, without what cannot be seen; empty: there is none. */
export function tidyName(name: string): string {
  const line = [...inOneLine(name).trim()].slice(0, RESPONSE_LIMITS.name).join('').trim();
  return firstForbidden(line, { lines: false }) === undefined ? line : '';
}

/** Somebody of whom nothing is known yet. */
export const nobody = (programmeId: string, person: string): Heard => ({
  format: 'towpath-heard/1',
  key: heardKey(programmeId, person),
  programmeId,
  person,
  entries: [],
});

/** What the leader says of a person. `undefined` leaves it as it is; empty takes it back. */
export interface Words {
  readonly name?: string | undefined;
  readonly group?: string | undefined;
  readonly same?: string | undefined;
}

/** A person with the leader's words for them. */
export function described(heard: Heard, words: Words, now: number): Heard {
  const said: Words = {
    ...heard.known,
    ...(words.name === undefined ? {} : { name: tidyName(words.name) }),
    ...(words.group === undefined ? {} : { group: words.group }),
    ...(words.same === undefined ? {} : { same: words.same }),
  };
  const known: KnownOf = {
    at: after(now, heard.known),
    ...(said.name ? { name: said.name } : {}),
    ...(said.group ? { group: said.group } : {}),
    ...(said.same ? { same: said.same } : {}),
  };
  return { ...heard, known };
}

/** Which session of a programme was done on a day. */
export interface Day {
  /** Local calendar date, ISO 8601. */
  readonly date: string;
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
}

/** A day's list with a tick set or taken back. */
export function marked(
  day: Attendance | undefined,
  programmeId: string,
  { date, week, session }: Day,
  { person, present, now }: { readonly person: string; readonly present: boolean; now: number },
): Attendance {
  const key = attendanceKey(programmeId, date);
  const mark = { present, at: after(now, day?.marks[person]) };
  const which = { week, session, at: after(now, day?.which) };
  if (day === undefined)
    return {
      format: 'towpath-attendance/1',
      key,
      programmeId,
      date,
      which,
      marks: { [person]: mark },
    };
  const isSame = day.which.week === week && day.which.session === session;
  return {
    ...day,
    which: isSame ? day.which : which,
    marks: { ...day.marks, [person]: mark },
  };
}

/** What is said of a programme of which nothing was said yet. */
export const unsaid = (programmeId: string): BoardSetup => ({
  format: 'towpath-board/1',
  programmeId,
  expected: {},
  forgotten: [],
});

/** With how many are in a group. @param count 0: it is not known */
export function withExpected(
  setup: BoardSetup,
  group: string,
  count: number,
  now: number,
): BoardSetup {
  const whole = Math.min(CAPACITY.people, Math.max(0, Math.round(count) || 0));
  const said = { count: whole, at: after(now, setup.expected[group]) };
  return { ...setup, expected: { ...setup.expected, [group]: said } };
}

/** With whether what was heard stays past its day. */
export const withKeep = (setup: BoardSetup, on: boolean, now: number): BoardSetup => ({
  ...setup,
  keep: { on, at: after(now, setup.keep) },
});
