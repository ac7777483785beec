/** Fictional members of the club on the salt marsh, as their leader hears of them. */
import type { Attendance } from '../../../src/domain/board/attendance.ts';
import { attendanceKey } from '../../../src/domain/board/attendance.ts';
import type { BoardInput } from '../../../src/domain/board/board.ts';
import type { Heard, HeardEntry, KnownOf } from '../../../src/domain/board/heard.ts';
import { HAND, heardKey } from '../../../src/domain/board/heard.ts';
import type { Niggle } from '../../../src/domain/log/entry.ts';
import type { Programme } from '../../../src/domain/programme/programme.ts';
import { HERON, on } from '../advice/people.ts';

export { HERON, on, UNDATED } from '../advice/people.ts';

export interface Told {
  readonly week: number;
  /** From 1, Monday; the day in the calendar's week of the same number. */
  readonly weekday?: number;
  readonly date?: string;
  readonly session?: number;
  readonly group?: string;
  readonly effort?: number;
  readonly effortLater?: number;
  readonly niggle?: Niggle;
  readonly sign?: true;
  readonly note?: string;
  /** Percent of a plan of 31 minutes. */
  readonly done?: number;
  readonly id?: string;
  readonly toldAt?: number;
}

const time = (date: string, hour = 9): number =>
  Date.parse(`${date}T${String(hour).padStart(2, '0')}:00:00Z`);

let number = 0;

export function toldEntry(told: Told, group: string, at: number, programme = HERON): HeardEntry {
  const { week, weekday = 2, session = 1, done = 100 } = told;
  const date = told.date ?? on(week, weekday);
  const seconds = Math.round((1860 * done) / 100);
  number += 1;
  return {
    id: told.id ?? `t${String(number).padStart(6, '0')}`,
    week,
    session,
    group: told.group ?? group,
    startedAt: time(date),
    offsetMinutes: 0,
    zone: 'Europe/London',
    localDate: date,
    doneSeconds: seconds,
    activeSeconds: seconds,
    target: programme.weeks[week - 1]?.effort ?? 50,
    ...(told.effort !== undefined && { effort: told.effort }),
    ...(told.effortLater !== undefined && { effortLater: told.effortLater }),
    ...(told.niggle && { niggle: told.niggle }),
    ...(told.sign && { warningSign: told.sign }),
    ...(told.note !== undefined && { note: told.note }),
    toldAt: told.toldAt ?? at,
  };
}

export interface Member {
  readonly name?: string;
  readonly group?: string;
  /** The date on which they told last; nothing: they never did. */
  readonly toldOn?: string;
  readonly leftOut?: number;
  readonly known?: KnownOf;
  readonly sessions?: readonly Told[];
  readonly programme?: Programme;
}

/** Somebody of whom something was heard. */
export function member(person: string, made: Member = {}): Heard {
  const { group = 'curlew', toldOn, leftOut = 0, name, known, sessions = [] } = made;
  const { programme = HERON } = made;
  const last = sessions
    .map((each) => each.date ?? on(each.week, each.weekday ?? 2))
    .sort()
    .at(-1);
  const day = toldOn ?? last;
  const at = day === undefined ? 0 : time(day, 20);
  const entries = sessions.map((told) => toldEntry(told, group, at, programme));
  return {
    format: 'towpath-heard/1',
    key: heardKey(programme.id, person),
    programmeId: programme.id,
    person,
    ...(day !== undefined && {
      told: { at, group, revision: 1, leftOut, ...(name !== undefined && { name }) },
    }),
    ...(known && { known }),
    entries: entries.sort((a, b) => a.startedAt - b.startedAt),
  };
}

/** Somebody who was written in by the leader. */
export const byHand = (id: string, known: Omit<KnownOf, 'at'> & { at?: number }): Heard => ({
  format: 'towpath-heard/1',
  key: heardKey(HERON.id, `${HAND}${id}`),
  programmeId: HERON.id,
  person: `${HAND}${id}`,
  known: { at: 1, ...known },
  entries: [],
});

/** Who was there on a day. */
export function dayOf(
  date: string,
  which: { readonly week: number; readonly session?: number },
  marks: Readonly<Record<string, boolean>>,
): Attendance {
  return {
    format: 'towpath-attendance/1',
    key: attendanceKey(HERON.id, date),
    programmeId: HERON.id,
    date,
    which: { session: 1, ...which, at: time(date) },
    marks: Object.fromEntries(
      Object.entries(marks).map(([person, present]) => [person, { present, at: time(date) }]),
    ),
  };
}

export const boardInput = (
  heard: readonly Heard[],
  rest: Partial<Omit<BoardInput, 'heard'>> = {},
): BoardInput => ({ programme: HERON, heard, days: [], today: on(2, 7), ...rest });
