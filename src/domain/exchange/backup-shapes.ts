import * as v from 'valibot';
import { type LogEntry, NIGGLE_PLACES } from '../log/entry.ts';
import type { Decision, Following, Pause } from '../log/following.ts';
import { readEntry } from '../log/read-entry.ts';
import { dayOf } from '../programme/dates.ts';

/**
 * What a record must be for the screens to be able to show it. Only looked at, never rewritten:
 * keys that this version does not know stay where they are.
 */

const DAY_SECONDS = 86_400;
/** Farthest moment that a date can be made of (ECMA-262, section 21.4.1.1). */
const MOMENT = 8.64e15;
const TEXT_MAX = 20_000;

const text = v.pipe(v.string(), v.maxLength(TEXT_MAX));
const name = v.pipe(v.string(), v.minLength(1), v.maxLength(TEXT_MAX));
const within = (least: number, most: number) =>
  v.pipe(v.number(), v.minValue(least), v.maxValue(most));
const whole = (least: number, most: number) => v.pipe(within(least, most), v.integer());
const count = whole(1, 10_000);
const moment = within(-MOMENT, MOMENT);
const date = v.pipe(
  v.string(),
  v.check((value) => dayOf(value) !== undefined),
);
const seconds = within(0, DAY_SECONDS);
/** A picture of a union of texts that the compiler refuses while one is missing. */
const oneOf = <T extends string>(all: Readonly<Record<T, true>>) =>
  v.picklist(Object.keys(all) as T[]);

const FeelingShape = v.object({
  effort: v.optional(within(0, 10)),
  effortLater: v.optional(within(0, 10)),
  niggle: v.optional(
    v.object({
      place: v.picklist(NIGGLE_PLACES),
      side: v.optional(v.picklist(['left', 'right', 'both'])),
      severity: v.optional(v.picklist([1, 2, 3])),
    }),
  ),
  soreness: v.optional(v.literal(true)),
  warningSign: v.optional(v.boolean()),
  note: v.optional(text),
});

const EntryShape = v.object({
  format: v.literal('towpath-log/2' satisfies LogEntry['format']),
  id: name,
  programme: v.object({ id: name, revision: v.number(), title: text }),
  group: v.object({ id: name, name: text }),
  week: count,
  session: count,
  plan: text,
  target: within(0, 100),
  startedAt: moment,
  offsetMinutes: whole(-1440, 1440),
  zone: text,
  localDate: date,
  outcome: oneOf<LogEntry['outcome']>({ finished: true, 'ended-early': true }),
  doneSeconds: seconds,
  activeSeconds: seconds,
  covered: v.array(v.tuple([seconds, seconds])),
  feeling: FeelingShape,
  feltAt: v.optional(moment),
  how: oneOf<LogEntry['how']>({ app: true, there: true, 'by-hand': true }),
  distanceM: v.optional(within(0, 1_000_000)),
  editedAt: v.optional(moment),
});

const FollowingShape = v.object({
  format: v.literal('towpath-following/1' satisfies Following['format']),
  programmeId: name,
  startedOn: v.optional(date),
  pauses: v.array(
    v.object({
      from: date,
      to: v.optional(date),
      why: oneOf<Pause['why']>({ holiday: true, illness: true, other: true }),
    }),
  ),
  decisions: v.array(
    v.object({
      on: date,
      week: count,
      group: name,
      why: oneOf<Decision['why']>({
        'go-on': true,
        repeat: true,
        ease: true,
        'step-up': true,
        're-entry': true,
        chosen: true,
        asked: true,
      }),
    }),
  ),
});

const PersonShape = v.object({
  format: v.literal('towpath-person/1'),
  programmeId: name,
  secret: name,
  name: v.optional(text),
  told: v.array(v.object({ at: moment, ids: v.array(text) })),
  under16: v.optional(v.boolean()),
});
/** Who the person is to a leader, as it lies in a backup. */
export type PersonRecord = v.InferOutput<typeof PersonShape>;

const CellsShape = v.array(
  v.object({ text, good: v.optional(text), pinned: v.optional(v.literal(true)) }),
);
const SheetShape = v.object({
  format: v.literal('towpath-sheet/1'),
  key: name,
  changedAt: moment,
  tab: text,
  mark: text,
  sheet: v.object({
    id: name,
    title: text,
    language: text,
    startDate: v.optional(text),
    goal: v.object({ name: text, distanceM: v.number(), date: v.optional(text) }),
    leader: text,
    groups: v.array(v.object({ id: name, name: text, for: text })),
    weeks: v.array(
      v.object({
        focus: text,
        effort: within(0, 100),
        timesPerWeek: v.object({ min: v.number(), max: v.number() }),
        // Its own keys only, whatever they are called.
        sessions: v.custom<Readonly<Record<string, unknown>>>(
          (value) =>
            typeof value === 'object' &&
            value !== null &&
            Object.values(value).every((cells) => v.is(CellsShape, cells)),
        ),
        together: v.optional(v.number()),
      }),
    ),
    reminders: v.array(text),
    kept: v.optional(v.custom<object>((value) => typeof value === 'object' && value !== null)),
  }),
});

const PROGRAMME_TEXT_MAX = 1_000_000;
const StoredProgrammeShape = v.object({
  id: name,
  text: v.pipe(v.string(), v.maxLength(PROGRAMME_TEXT_MAX)),
  cameAt: moment,
  signature: v.optional(name),
  key: v.optional(name),
  retired: v.optional(v.array(text)),
});
/** A programme that came, as it lies in a backup. */
export type ProgrammeRecord = v.InferOutput<typeof StoredProgrammeShape>;

const SentShape = v.object({
  id: name,
  revision: count,
  text: v.pipe(v.string(), v.maxLength(PROGRAMME_TEXT_MAX)),
  signature: text,
  at: moment,
});

/** A record as it is, when it has the shape. */
const as =
  <T>(shape: v.GenericSchema<unknown, T>) =>
  (value: unknown): T | undefined =>
    v.is(shape, value) ? (value as T) : undefined;

/** An entry of this or an older format, in today's shape. */
export function asEntry(value: unknown): LogEntry | undefined {
  if (v.is(EntryShape, value)) return value as LogEntry;
  const carried = readEntry(value);
  return v.is(EntryShape, carried) ? (carried as LogEntry) : undefined;
}
/** How a programme is gone through; nothing where it is of another shape. So are those below. */
export const asFollowing = as(FollowingShape) as (value: unknown) => Following | undefined;
/** Who the person is to a leader. */
export const asPerson = as(PersonShape);
/** A programme in writing. */
export const asSheet = as(SheetShape);
/** A programme that came. */
export const asProgramme = as(StoredProgrammeShape);
/** What was last sent. */
export const asSent = as(SentShape);
