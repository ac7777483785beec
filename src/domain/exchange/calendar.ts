import { isoDate } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';
import { durationText, escapeText, foldLine } from './content-line.ts';

/** Something in a calendar. The words are the caller's. */
export interface CalendarEvent {
  /** The same for the same thing for ever: a newer file then takes the older one's place. */
  readonly uid: string;
  /** ISO 8601 calendar date. */
  readonly date: string;
  readonly summary: string;
  readonly description: string;
  /** Nothing: the whole day. */
  readonly at?: {
    /** Minutes after midnight, on the clock of the place where the person is. */
    readonly minutes: number;
    readonly seconds: number;
    readonly alarm?: { readonly minutesBefore: number; readonly words: string };
  };
}

/**
 * Under which name a calendar knows a session, on every day it is ever moved to.
 *
 * @param programmeId the id under which this phone keeps the programme
 */
export const sessionUid = (programmeId: string, week: number, session: number): string =>
  `${programmeId}.w${week}.s${session}@towpath.invalid`;

/** Under which name a calendar knows the event that a programme leads to. */
export const eventUid = (programmeId: string): string => `${programmeId}.event@towpath.invalid`;

const two = (n: number): string => String(n).padStart(2, '0');
const basic = (date: string): string => date.replaceAll('-', '');

/** UTC, as DTSTAMP must be (RFC 5545, section 3.8.7.2). */
const utcText = (at: number): string =>
  `${new Date(at).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;

const nextDay = (date: string): string => isoDate((dayOf(date) ?? 0) + 1);

/**
 * Local time without a zone (RFC 5545, section 3.3.5, form 1): half past six is half past six
 * wherever the person is and on both sides of a clock change. The file cannot know where its
 * reader lives, and a zone named by guess would move every session of somebody who travels.
 */
function timeLines({ date, at }: CalendarEvent): readonly string[] {
  if (at === undefined)
    return [
      `DTSTART;VALUE=DATE:${basic(date)}`,
      `DTEND;VALUE=DATE:${basic(nextDay(date))}`,
      // A day to look forward to does not make anybody busy.
      'TRANSP:TRANSPARENT',
    ];
  const clock = `${two(Math.floor(at.minutes / 60))}${two(at.minutes % 60)}00`;
  return [`DTSTART:${basic(date)}T${clock}`, `DURATION:${durationText(at.seconds)}`];
}

function alarmLines({ at }: CalendarEvent): readonly string[] {
  if (at?.alarm === undefined) return [];
  return [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `TRIGGER:${durationText(-60 * at.alarm.minutesBefore)}`,
    `DESCRIPTION:${escapeText(at.alarm.words)}`,
    'END:VALARM',
  ];
}

/** Whole minutes since 1970: the later file has the higher number, in 31 bits until the year 6053. */
const sequenceOf = (at: number): number => Math.max(0, Math.floor(at / 60_000));

const eventLines = (event: CalendarEvent, stamp: number): readonly string[] => [
  'BEGIN:VEVENT',
  `UID:${event.uid}`,
  `DTSTAMP:${utcText(stamp)}`,
  `SEQUENCE:${sequenceOf(stamp)}`,
  ...timeLines(event),
  `SUMMARY:${escapeText(event.summary)}`,
  ...(event.description === '' ? [] : [`DESCRIPTION:${escapeText(event.description)}`]),
  ...alarmLines(event),
  'END:VEVENT',
];

/**
 * An iCalendar file (RFC 5545) with one event for each of what is planned. No rule of repetition:
 * every week's session is another, and each needs a name of its own to be moved or replaced.
 *
 * @param stamp UTC milliseconds at which it is made
 */
export function toCalendar(events: readonly CalendarEvent[], stamp: number): string {
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Towpath//Towpath//EN',
    'CALSCALE:GREGORIAN',
    ...events.flatMap((event) => eventLines(event, stamp)),
    'END:VCALENDAR',
  ]
    .map(foldLine)
    .join('');
}
