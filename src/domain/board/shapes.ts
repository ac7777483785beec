import * as v from 'valibot';
import { isPlainObject } from '../exchange/own.ts';
import {
  date,
  id,
  isEachOnce,
  isOnItsDay,
  RESPONSE_LIMITS,
  secret,
  ToldEntryShape,
  time,
  whole,
  words,
} from '../exchange/response.ts';
import { type Attendance, attendanceKey } from './attendance.ts';
import { CAPACITY } from './capacity.ts';
import { HAND, type Heard, heardKey } from './heard.ts';
import { byStart } from './merge.ts';
import type { BoardSetup } from './setup.ts';

/*
 * What a stored record must be, or one from a file of somebody who leads too: every value bounded.
 * Only what is named here is taken; a record of a newer format is nobody's to read.
 */

const key = v.pipe(v.string(), v.maxLength(200));
const person = v.pipe(
  v.string(),
  v.regex(new RegExp(`^(?:[\\w-]{22,64}|${HAND.replace('.', '\\.')}[\\w-]{1,64})$`)),
);
const name = words(RESPONSE_LIMITS.name, { lines: false });

const HeardShape = v.pipe(
  v.object({
    format: v.literal('towpath-heard/1' satisfies Heard['format']),
    key,
    programmeId: id,
    person,
    told: v.optional(
      v.object({
        at: time,
        name: v.optional(name),
        group: id,
        revision: whole(0, 1_000_000),
        leftOut: whole(0, 1_000_000),
      }),
    ),
    known: v.optional(
      v.object({
        at: time,
        name: v.optional(name),
        group: v.optional(id),
        same: v.optional(secret),
      }),
    ),
    entries: v.pipe(
      v.array(
        v.pipe(
          v.object({ ...ToldEntryShape.entries, group: id, toldAt: time }),
          v.check((entry) => isOnItsDay(entry)),
        ),
      ),
      v.maxLength(CAPACITY.sessions),
      v.check((list) => isEachOnce(list)),
    ),
  }),
  v.check((heard) => heard.key === heardKey(heard.programmeId, heard.person)),
);

const object = v.custom<object>(isPlainObject);
const MarkShape = v.object({ present: v.boolean(), at: time });
const ExpectedShape = v.object({ count: whole(0, CAPACITY.people), at: time });

/** A record's own names and values, whatever they are called; nothing where one is wrong. */
function recordOf<T>(
  record: object,
  name: v.GenericSchema<unknown, string>,
  shape: v.GenericSchema<unknown, T>,
  most: number,
): Readonly<Record<string, T>> | undefined {
  const entries = Object.entries(record);
  if (entries.length > most) return undefined;
  const read: [string, T][] = [];
  for (const [key, value] of entries) {
    const each = v.safeParse(shape, value, { abortEarly: true });
    if (!v.is(name, key) || !each.success) return undefined;
    read.push([key, each.output]);
  }
  return Object.fromEntries(read);
}

const AttendanceShape = v.pipe(
  v.object({
    format: v.literal('towpath-attendance/1' satisfies Attendance['format']),
    key,
    programmeId: id,
    date,
    which: v.object({ week: whole(1, 52), session: whole(1, 50), at: time }),
    marks: object,
  }),
  v.check((day) => day.key === attendanceKey(day.programmeId, day.date)),
);

const SetupShape = v.object({
  format: v.literal('towpath-board/1' satisfies BoardSetup['format']),
  programmeId: id,
  expected: object,
  keep: v.optional(v.object({ on: v.boolean(), at: time })),
  forgotten: v.pipe(
    v.array(v.object({ digest: v.pipe(v.string(), v.regex(/^[\w-]{43}$/)), at: time })),
    v.maxLength(CAPACITY.forgotten),
  ),
});

/** What is known of a person, its sessions in order; nothing where it is none that can be read. */
export function asHeard(value: unknown): Heard | undefined {
  const read = v.safeParse(HeardShape, value, { abortEarly: true });
  if (!read.success) return undefined;
  // What is read from JSON is never there as `undefined`, which is all that the types differ in.
  const heard = read.output as Heard;
  return { ...heard, entries: [...heard.entries].sort(byStart) };
}

/** A day's list; nothing where it is none that can be read. */
export function asAttendance(value: unknown): Attendance | undefined {
  const read = v.safeParse(AttendanceShape, value, { abortEarly: true });
  if (!read.success) return undefined;
  const marks = recordOf(read.output.marks, person, MarkShape, CAPACITY.people);
  return marks && { ...read.output, marks };
}

/** What the leader said of a programme's people; nothing where it cannot be read. */
export function asSetup(value: unknown): BoardSetup | undefined {
  const read = v.safeParse(SetupShape, value, { abortEarly: true });
  if (!read.success) return undefined;
  const expected = recordOf(read.output.expected, id, ExpectedShape, CAPACITY.groups);
  return expected && ({ ...read.output, expected } as BoardSetup);
}
