import { type Day, dayAt } from '../programme/calendar.ts';
import type { Programme } from '../programme/programme.ts';
import type { BoardInput, BoardSession, PersonRow } from './board.ts';
import { type Calendar, calendarOf } from './calendar.ts';
import { cellOf, type Telling } from './cells.ts';
import { type BoardPerson, calledBy, peopleOf, toldBy } from './people.ts';
import { enoughBy } from './plan-ref.ts';
import { type PersonRecord, recordOf } from './record.ts';
import { thereOf } from './there.ts';

/** A person's row with what it was made of. */
export interface Seen {
  readonly row: PersonRow;
  readonly record: PersonRecord;
  readonly person: BoardPerson;
  /** The local day on which they last told. */
  readonly told?: Day;
}

/** The day where the person was: by the offset of their latest session. */
function toldDay(person: BoardPerson, { told: entries }: PersonRecord): Day | undefined {
  const told = toldBy(person);
  return told && dayAt(told.at, entries.at(-1)?.offsetMinutes ?? 0);
}

const NONE: readonly BoardSession[] = [];

/** A person's sessions by week; those of weeks that the programme has no more stand under 0. */
function byWeek(sessions: readonly BoardSession[], weeks: number): readonly BoardSession[][] {
  const lists: BoardSession[][] = [];
  for (const session of sessions) {
    const n = session.week > weeks ? 0 : session.week;
    const list = lists[n];
    if (list === undefined) lists[n] = [session];
    else list.push(session);
  }
  return lists;
}

function seenOf(
  person: BoardPerson,
  record: PersonRecord,
  programme: Programme,
  calendar: Calendar,
): Seen {
  const { name, group, byHand } = calledBy(person);
  const [told, day] = [toldBy(person), toldDay(person, record)];
  const { sessions } = record;
  const reached = sessions.reduce((most, { week }) => Math.max(most, week), 0);
  const leftOut = told?.leftOut ?? 0;
  const enough = enoughBy(programme, group);
  const telling: Telling = { enough, leftOut, reached, ...(day !== undefined && { told: day }) };
  const lists = byWeek(sessions, programme.weeks.length);
  const row: PersonRow = {
    person: person.heard.person,
    ...(name !== undefined && { name }),
    byHand,
    group,
    ...(told && { heardAt: told.at }),
    leftOut,
    cells: programme.weeks.map((week, n) =>
      cellOf(n + 1, week, lists[n + 1] ?? NONE, telling, calendar),
    ),
    elsewhere: lists[0] ?? NONE,
  };
  return { row, record, person, ...(day !== undefined && { told: day }) };
}

interface Kept {
  readonly record: PersonRecord;
  readonly calendar: Calendar;
  readonly seen: Seen;
}

const known = new WeakMap<BoardPerson['heard'], Kept>();

const isSame = (a: Calendar, b: Calendar): boolean =>
  a.today === b.today && a.start === b.start && a.week === b.week;

/** Somebody of whom nothing changed, on the same day, keeps the same row: the same object. */
function kept(person: BoardPerson, { programme, days }: BoardInput, calendar: Calendar): Seen {
  const record = recordOf(person, programme, thereOf(person, days));
  const before = known.get(person.heard);
  if (before !== undefined && before.record === record && isSame(before.calendar, calendar))
    return before.seen;
  const seen = seenOf(person, record, programme, calendar);
  known.set(person.heard, { record, calendar, seen });
  return seen;
}

/** Everybody of a programme, and how its weeks lie. */
export interface Everybody {
  readonly calendar: Calendar;
  readonly people: readonly Seen[];
}

const looked = new WeakMap<BoardInput, Everybody>();

/** The same input is looked through once. */
export function everybodyIn(input: BoardInput): Everybody {
  const found = looked.get(input);
  if (found !== undefined) return found;
  const calendar = calendarOf(input);
  const made = {
    calendar,
    people: peopleOf(input.heard).map((person) => kept(person, input, calendar)),
  };
  looked.set(input, made);
  return made;
}
