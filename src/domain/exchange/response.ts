import * as v from 'valibot';
import { NIGGLE_PLACES, type Niggle } from '../log/entry.ts';
import { dayOf } from '../programme/dates.ts';
import { ID } from '../programme/shape.ts';
import { firstForbidden } from '../programme/unseen.ts';
import type { Percent } from '../units.ts';

/** How much a response may hold. */
export const RESPONSE_LIMITS = { entries: 200, name: 60, note: 500 } as const;

/** One session as it is told. What was not chosen is not there. */
export interface ToldEntry {
  readonly id: string;
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
  /** Where it is not the group of the response. */
  readonly group?: string;
  /** UTC milliseconds, with the offset, zone and date of the place where it started. */
  readonly startedAt: number;
  readonly offsetMinutes: number;
  readonly zone: string;
  readonly localDate: string;
  readonly doneSeconds: number;
  readonly activeSeconds: number;
  readonly target: Percent;
  /** 0 to 10, right after the session and half an hour or more later. */
  readonly effort?: number;
  readonly effortLater?: number;
  readonly niggle?: Niggle;
  readonly warningSign?: true;
  readonly note?: string;
}

/** What a participant chose to tell the leader of one programme. */
export interface Response {
  readonly format: 'towpath-response/1';
  readonly programme: { readonly id: string; readonly revision: number };
  /** Random, the same in every response of a person for this programme, and in no other. */
  readonly secret: string;
  readonly name?: string;
  /** Id of the group that the person follows. */
  readonly group: string;
  /** UTC milliseconds: of two that tell of the same session the later is right. */
  readonly sentAt: number;
  /** Sessions of this programme that the leader has not been told of. */
  readonly leftOut: number;
  /** In the order of `startedAt`, each id once. */
  readonly entries: readonly ToldEntry[];
}

/** Whole numbers from one to another. */
export const whole = (min: number, max: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(min), v.maxValue(max));
const rating = v.pipe(v.number(), v.minValue(0), v.maxValue(10));
/** Something to read of so many characters, none of them unseen. */
export const words = (limit: number, { lines }: { readonly lines: boolean }) =>
  v.pipe(
    v.string(),
    v.check((text) => text.trim() !== '' && [...text].length <= limit),
    v.check((text) => firstForbidden(text, { lines }) === undefined),
  );

/** Of a programme or a group. */
export const id = v.pipe(v.string(), v.regex(ID));
const entryId = v.pipe(v.string(), v.regex(/^[\w-]{1,64}$/));
const DAY_MS = 86_400_000;
/** 2020 to 2100: a clock that was never set is told as wrong instead of as history. */
export const time = whole(Date.UTC(2020, 0, 1), Date.UTC(2100, 0, 1));

/** Local calendar date, ISO 8601. */
export const date = v.pipe(
  v.string(),
  v.check((text) => dayOf(text) !== undefined),
);
/** Random, of one person in one programme. */
export const secret = v.pipe(v.string(), v.regex(/^[\w-]{22,64}$/));

const niggle = v.object({
  place: v.picklist(NIGGLE_PLACES),
  side: v.optional(v.picklist(['left', 'right', 'both'] as const)),
  severity: v.optional(v.picklist([1, 2, 3] as const)),
});

/** A session starts on its own date, somewhere on earth. */
export const isOnItsDay = ({
  startedAt,
  localDate,
}: Pick<ToldEntry, 'startedAt' | 'localDate'>): boolean =>
  Math.abs(Date.parse(`${localDate}T12:00:00Z`) - startedAt) <= 1.5 * DAY_MS;

/** Whether no id stands twice in a list. */
export const isEachOnce = (list: readonly { readonly id: string }[]): boolean =>
  new Set(list.map((each) => each.id)).size === list.length;

/** One session as it is told, through every bound. */
export const ToldEntryShape = v.pipe(
  v.object({
    id: entryId,
    week: whole(1, 52),
    session: whole(1, 50),
    group: v.optional(id),
    startedAt: time,
    // No zone is farther from UTC than 14 hours (IANA time zone database, from memory).
    offsetMinutes: whole(-900, 900),
    zone: v.pipe(v.string(), v.regex(/^[A-Za-z0-9_+/-]{1,64}$/)),
    localDate: date,
    doneSeconds: whole(0, 86_400),
    activeSeconds: whole(0, 86_400),
    target: v.pipe(v.number(), v.minValue(0), v.maxValue(100)),
    effort: v.optional(rating),
    effortLater: v.optional(rating),
    niggle: v.optional(niggle),
    warningSign: v.optional(v.literal(true)),
    note: v.optional(words(RESPONSE_LIMITS.note, { lines: true })),
  }),
  v.check((entry) => isOnItsDay(entry)),
);

/** Only what is named here is taken; whatever else stands in a response is dropped. */
export const ResponseShape = v.object({
  format: v.literal('towpath-response/1'),
  programme: v.object({ id, revision: whole(0, 1_000_000) }),
  secret,
  name: v.optional(words(RESPONSE_LIMITS.name, { lines: false })),
  group: id,
  sentAt: time,
  leftOut: whole(0, 1_000_000),
  entries: v.pipe(
    v.array(ToldEntryShape),
    v.maxLength(RESPONSE_LIMITS.entries),
    v.check((list) => isEachOnce(list)),
  ),
});
