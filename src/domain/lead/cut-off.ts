import { LONGEST_WAIT } from '../session/wait.ts';
import { type Ms, ms } from '../units.ts';

/**
 * Where a session that is led was when it was last known, and when that was. While everyone waits
 * for a start that was agreed ahead it is its beginning, and that start.
 */
export interface LeadMark {
  /** Place in the session. */
  readonly place: Ms;
  /** UTC milliseconds. */
  readonly wall: number;
  /** The groups stood: the place does not move by the clock. */
  readonly holding: boolean;
}

/** After this nobody stands on hold any more. */
const FORGET_AFTER_MS = 3 * 3_600_000;

/**
 * Where the groups are by the clock, when the page that led them was cut off: they walk and run
 * on without it. On hold they stand where they were.
 *
 * @param now UTC milliseconds
 * @returns nothing when all groups are done by now, or when it is too long ago
 */
export function placeByClock(mark: LeadMark, total: Ms, now: number): Ms | undefined {
  const since = now - mark.wall;
  if (since < 0 || since > FORGET_AFTER_MS) return undefined;
  const place = ms(mark.place + (mark.holding ? 0 : since));
  return place < total ? place : undefined;
}

/**
 * The agreed start, UTC milliseconds, of leading that was cut off while everyone waited for it.
 *
 * @returns nothing when it has passed, or when it is further ahead than any start can be: the
 * clock was put back
 */
export function agreedStartOf({ place, wall, holding }: LeadMark, now: number): number | undefined {
  const ahead = wall - now;
  return place === 0 && !holding && ahead > 0 && ahead <= LONGEST_WAIT ? wall : undefined;
}
