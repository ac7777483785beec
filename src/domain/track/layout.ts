import type { Ms } from '../units.ts';

/** A stretch of the track, in track time. It includes its start and excludes its end. */
export interface Lane {
  readonly start: Ms;
  readonly end: Ms;
}

/**
 * Where things lie in one composed track. Session time and track time are the same from 0 to
 * `session`; what follows is reached by a seek only. Every lane ends in quiet, so that a late
 * script costs quiet and never somebody else's words.
 */
export interface TrackLayout {
  /** Length of the session itself: the timeline's total. */
  readonly session: Ms;
  /** Quiet after the end (it begins with the finish words). */
  readonly tail: Lane;
  readonly holding: Lane;
  /** Words, then one minute; `minute.end` is where the session is to be gone back to. */
  readonly oneMore: Lane & { readonly minute: Lane };
  /** Five minutes of easy walk, only where the plan has no cool-down of its own. */
  readonly coolDown?: Lane;
  readonly total: Ms;
}
