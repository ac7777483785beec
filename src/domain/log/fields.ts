/** What a person types about a session, and what cannot have been. */
import { fail, ok, type Result } from '../result.ts';
import { type Began, beganAt, isDate, momentsOf, type OffsetAt } from './local-time.ts';

/** Why what was typed about a session cannot be. `src/copy/by-hand.ts` has a sentence for each. */
export type FieldCode =
  | 'date-none'
  | 'date-future'
  | 'date-old'
  | 'time-none'
  | 'time-skipped'
  | 'time-future'
  | 'ends-future'
  | 'minutes-none'
  | 'minutes-number'
  | 'minutes-long'
  | 'distance-number'
  | 'distance-fast';

/** A year before it is a slip of the finger: nothing that people kept in this app is older. */
const FIRST_YEAR = '2000';

/**
 * No session of a programme is longer than 2 h 30; this leaves room for slow days and the way
 * home, and none for 40 hours (common practice, no source).
 */
export const LONGEST_MINUTES = 360;

/**
 * Faster than anyone has run 5 km: the world record of 12:35 is 6.6 m/s (from memory). What is
 * faster is a slip of the finger, a wheel or a bus.
 */
export const FASTEST_M_PER_S = 7;

/** Where and when a person writes. */
export interface Here {
  /** UTC milliseconds. */
  readonly now: number;
  readonly zone: string;
  readonly offsetAt: OffsetAt;
}

/**
 * When a session began, from a date and a time by the clocks of the place. Of a time that was
 * there twice, the first is taken.
 *
 * @param date ISO 8601 calendar date, or empty, @param time `HH:MM`, or empty
 */
export function readWhen(date: string, time: string, here: Here): Result<Began, FieldCode> {
  const { now, zone, offsetAt } = here;
  // Pickers let a fifth digit of a year be typed.
  if (/^\d{5,}-\d\d-\d\d$/.test(date)) return fail('date-future');
  if (!isDate(date)) return fail('date-none');
  if (date < FIRST_YEAR) return fail('date-old');
  if (date > beganAt(now, { zone, offsetMinutes: offsetAt(now) }).localDate)
    return fail('date-future');
  if (!/^\d\d:\d\d$/.test(time)) return fail('time-none');
  const [first] = momentsOf(date, time, offsetAt);
  if (first === undefined) return fail('time-skipped');
  if (first > now) return fail('time-future');
  return ok(beganAt(first, { zone, offsetMinutes: offsetAt(first) }));
}

/** Whole minutes moved, as typed. @returns seconds */
export function readMinutes(text: string): Result<number, FieldCode> {
  const typed = text.trim();
  if (typed === '') return fail('minutes-none');
  const minutes = Number(typed.replace(',', '.'));
  if (!Number.isFinite(minutes) || minutes <= 0) return fail('minutes-number');
  if (minutes > LONGEST_MINUTES) return fail('minutes-long');
  return ok(Math.max(1, Math.round(minutes * 60)));
}

/** A session that is over is over: it cannot have ended after now. */
export const endsInTime = (startedAt: number, seconds: number, now: number): boolean =>
  startedAt + seconds * 1000 <= now;

/**
 * Kilometres as typed, with a point or a comma; nothing typed is not known.
 *
 * @param seconds time moved
 * @returns whole metres
 */
export function readKilometres(
  text: string,
  seconds: number,
): Result<number | undefined, FieldCode> {
  const typed = text.trim();
  if (typed === '') return ok(undefined);
  const metres = Math.round(Number(typed.replace(',', '.')) * 1000);
  if (!/^(\d+([.,]\d*)?|[.,]\d+)$/.test(typed) || metres < 1) return fail('distance-number');
  return metres > seconds * FASTEST_M_PER_S ? fail('distance-fast') : ok(metres);
}

/** Kilometres for the field: `3.1`. */
export const kilometres = (metres: number | undefined): string =>
  metres === undefined ? '' : String(metres / 1000);
