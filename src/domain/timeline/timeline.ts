import type { Activity, Part } from '../programme/plan.ts';
import type { Ms, Percent } from '../units.ts';

/** Which time round it is. Both numbers from 1. */
export interface Turn {
  readonly n: number;
  readonly of: number;
}

/** A stretch of one activity. It includes its start and excludes its end. */
export interface Segment {
  readonly index: number;
  readonly start: Ms;
  readonly end: Ms;
  readonly part: Part;
  readonly activity: Activity;
  readonly effort: Percent;
  /** Turn of a repeat that holds no further repeat. Repeats of one turn do not count. */
  readonly set?: Turn;
  /** Turn of the repeat around sets; a step between its sets has a round and no set. */
  readonly round?: Turn;
  /** Counts the outermost repeats of its part from 0, so that a second block of sets can be announced. */
  readonly block?: number;
  readonly note?: string;
}

/** A plan laid out in time: no gap, no overlap, from 0 to `total`. */
export interface Timeline {
  readonly segments: readonly Segment[];
  readonly total: Ms;
}
