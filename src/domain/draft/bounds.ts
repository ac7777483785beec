import { REVIEW_LIMITS } from '../review/limits.ts';
import { type Ms, ms } from '../units.ts';

/**
 * Lengths inside the solver: whole half minutes, since nothing finer is said. A main set of 42 is
 * 21 min.
 */
export type Half = number;

const HALF_MS = 30_000;

/** Half minutes as milliseconds. */
export const msOfHalf = (halves: Half): Ms => ms(halves * HALF_MS);
/** Rounds down: what somebody can do today is never made more. */
export const halfOf = (length: Ms): Half => Math.floor(length / HALF_MS);

/**
 * What no draft goes beyond. They are a careful leader's habits and not limits of safety: how fast
 * beginners may progress is contested. A rise of 10 % a week did not prevent injuries (Buist 2008,
 * Am J Sports Med 36:33-9), nor do ratios of weeks (Impellizzeri 2020). The clearest sign so far is
 * a single run much longer than any before it (Frandsen 2025, Br J Sports Med 59:1203-10:
 * experienced runners, by distance; for minutes and beginners it is our reading).
 */
export const BOUNDS = {
  /**
   * Easy walk before and after the main set: 5 min each (Mayo Clinic; American College of Sports
   * Medicine: 5 to 10 min).
   */
  ends: 10,
  /** Sets of one session. Common practice, no source. */
  sets: { min: 3, max: 12 },
  /** The walk inside a set, or the easier walk for those who walk: 1 to 10 min. Common practice. */
  easy: { min: 2, max: 20 },
  /** Longer walks than 2 min are whole minutes: nobody needs them finer. */
  easyFine: 4,
  /** Between two or three runs: 1 or 2 min. Common practice, no source. */
  between: { min: 2, max: 4 },
  /** The shorter of two or three runs: 2 min or more, in whole minutes. */
  other: 4,
  /** Main sets of whole weeks, and of the light week: so that the ends are not most of it. */
  main: { min: 30, lightMin: 20 },
  /** The first main set is at most 10 min longer than today's longest walk. Common practice. */
  firstMain: 20,
  /** A main set grows by 5 min a week at most. Common practice, no source. */
  mainRise: 10,
  /** The first week's running is at most 8 min more than today's longest run. Common practice. */
  firstHard: 16,
  /** Those who have never run begin with a minute at most. Common practice, no source. */
  firstStretch: 2,
  /** Running, or brisk walking for those who walk, rises by 4 min a week at most. Common practice. */
  rise: 8,
  /** In the first week walkers are brisk, and mixed groups run, in two thirds of the main set. */
  firstShare: 2 / 3,
  /** A mix stays one: at most three quarters of its main set are running. */
  mixShare: 3 / 4,
  /** The week of the event: main set half to two thirds of the week before, running two thirds. */
  light: { min: 1 / 2, max: 2 / 3 },
} as const;

/**
 * How long one stretch may be after the longest of the week before: what the review lets pass, in half minutes. 30 % more, or a minute and a half while stretches are so short that
 * 30 % is nothing (Frandsen 2025 saw more injuries from 10 % on; contested, see the review).
 */
export const longestAfter = (longest: Half): Half => {
  const { stretchGrowth, stretchFloor } = REVIEW_LIMITS;
  const grown = Math.floor((longest * (100 + stretchGrowth.value)) / 100);
  return Math.max(grown, longest + stretchFloor.value / 30);
};
