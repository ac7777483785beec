import type { Day } from '../programme/calendar.ts';
import type { Programme } from '../programme/programme.ts';
import type { BoardCell, BoardInput, PersonRow } from './board.ts';
import { type Calendar, calendarOf } from './calendar.ts';
import { cellOf, type Telling } from './cells.ts';
import { type BoardPerson, calledBy, peopleOf, toldBy } from './people.ts';
import { type Judged, type PersonRecord, recordOf } from './record.ts';
import { thereOf } from './there.ts';

/** A person's row with what it was made of. */
export interface Seen {
  readonly row: PersonRow;
  readonly record: PersonRecord;
  readonly person: BoardPerson;
  /** The local day on which they last told. */
  readonly told?: Day;
}

const DAY_MS = 86_400_000;

/** The day where the person was: by the offset of their latest session. */
function toldDay(person: BoardPerson, { log }: PersonRecord): Day | undefined {
  const told = toldBy(person);
  const last = log.findLast(({ how }) => how !== 'there');
  return told && Math.floor((told.at + (last?.offsetMinutes ?? 0) * 60_000) / DAY_MS);
}

function cellsOf(
  programme: Programme,
  judged: readonly Judged[],
  telling: Telling,
  calendar: Calendar,
): readonly BoardCell[] {
  const byWeek = new Map<number, Judged[]>();
  for (const each of judged) {
    const list = byWeek.get(each.session.week);
    if (list === undefined) byWeek.set(each.session.week, [each]);
    else list.push(each);
  }
  return programme.weeks.map((week, n) =>
    cellOf(n + 1, week, byWeek.get(n + 1) ?? [], telling, calendar),
  );
}

function seenOf(
  person: BoardPerson,
  record: PersonRecord,
  programme: Programme,
  calendar: Calendar,
): Seen {
  const { name, group, byHand } = calledBy(person);
  const [told, day] = [toldBy(person), toldDay(person, record)];
  const { judged } = record;
  const reached = judged.reduce((most, { session }) => Math.max(most, session.week), 0);
  const leftOut = told?.leftOut ?? 0;
  const telling = { leftOut, reached, ...(day !== undefined && { told: day }) };
  const row: PersonRow = {
    person: person.heard.person,
    ...(name !== undefined && { name }),
    byHand,
    group,
    ...(told && { heardAt: told.at }),
    leftOut,
    cells: cellsOf(programme, judged, telling, calendar),
    elsewhere: judged
      .filter(({ session }) => session.week > programme.weeks.length)
      .map(({ session }) => session),
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
