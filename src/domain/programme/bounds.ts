import type { Ms } from '../units.ts';
import { msOfSeconds } from '../units.ts';

/** Shortest step that can be announced and done. */
export const STEP_MIN: Ms = msOfSeconds(5);
/** Longest session, and so the longest step: 2 h 30 min. */
export const SESSION_MAX: Ms = msOfSeconds(9000);
/** Times that something is repeated at most. */
export const COUNT_MAX = 50;
/** Repeats inside one another: rounds of sets. */
export const DEPTH_MAX = 2;
/** Characters (not bytes) of a session's text and of a note. */
export const TEXT_MAX = 2000;
/** Characters of a step's note, counted in the same way. */
export const NOTE_MAX = 80;
/** Warm-up and cool-down of a plan without labels end here: what is longer belongs to the main part. */
export const EASY_PART_MAX: Ms = msOfSeconds(15 * 60);
