import { type Course, courseOf } from '../advice/course.ts';
import type { Situation } from '../advice/situation.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import type { Detail } from '../programme/problem.ts';
import type { Programme } from '../programme/programme.ts';
import type { Calendar } from './calendar.ts';
import type { DueCode, DueReason } from './due.ts';
import { logIn } from './record.ts';
import type { Seen } from './row.ts';

/** A reason with its numbers. */
export const reason = (code: DueCode, detail: Detail): DueReason => ({ code, detail });

/** What is looked at of one person. */
export interface Looked {
  readonly programme: Programme;
  readonly seen: Seen;
  readonly calendar: Calendar;
  /** The day of which something is known last: they told, or were there. */
  readonly last: Day;
}

/** A person's situation on a day, as far as the leader knows it. */
export const situationOn = ({ programme, seen }: Looked, day: Day, since?: string): Situation => ({
  programme,
  group: seen.row.group,
  entries: logIn(seen.record, seen.person, programme, since),
  today: isoDate(day),
});

/** The course of a day alone: nothing was decided that the leader knows of. */
export const courseOn = (situation: Situation): Course => courseOf({ ...situation, entries: [] });
