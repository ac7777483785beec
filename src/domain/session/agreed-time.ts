import { localDate } from '../log/local-date.ts';
import { momentsOf, type OffsetAt } from '../log/local-time.ts';
import { LONGEST_WAIT } from './wait.ts';

const MINUTE = 60_000;
const MARK = 5 * MINUTE;
/** For everybody to have tapped. */
const LEAST_AHEAD = 2 * MINUTE;
const DAY = 24 * 60 * MINUTE;

/**
 * The start that a group would agree on: the next time at a full five minutes, two minutes ahead
 * at least.
 *
 * @param now and the start: UTC milliseconds
 */
export const usualStart = (now: number): number => Math.ceil((now + LEAST_AHEAD) / MARK) * MARK;

/** A start in UTC milliseconds, or why there is none. */
export type AgreedTime =
  | { readonly ok: true; readonly at: number }
  | { readonly ok: false; readonly code: 'no-time' | 'too-far' };

/**
 * The moment that a group means by a time of day: the next one at which the clocks of the place
 * show it, and none when that is over half an hour ahead.
 *
 * @param time `HH:MM`, @param now UTC milliseconds
 */
export function agreedTime(time: string, now: number, offsetAt: OffsetAt): AgreedTime {
  if (!/^\d\d:\d\d$/.test(time)) return { ok: false, code: 'no-time' };
  // Around midnight the time is one of tomorrow's.
  const dates = [now, now + DAY].map((utc) => localDate(utc, offsetAt(utc)));
  const next = dates.flatMap((date) => momentsOf(date, time, offsetAt)).find((at) => at > now);
  if (next === undefined || next - now > LONGEST_WAIT) return { ok: false, code: 'too-far' };
  return { ok: true, at: next };
}
