import type { Detail } from '../programme/problem.ts';

/** Why somebody needs a word, gravest first. */
export const DUE_CODES = [
  /** A warning sign was told. */
  'sign',
  /** The same niggle again within 14 days. */
  'niggle-again',
  /** A niggle that made them stop, or changed how they move. */
  'niggle',
  /** Two of the last three felt two points or more harder than meant. */
  'harder',
  'cut-short',
  /** Nothing was heard for two weeks, and something was before. */
  'silent',
  /** Clearly easier than meant, and there is no harder group within reach. */
  'easy',
  /** Clearly easier than meant: the next group would fit. */
  'ready',
] as const;
/** A reason for a word; `copy/board-due.ts` has its sentences. */
export type DueCode = (typeof DUE_CODES)[number];

/** Why somebody needs a word, with the numbers that its sentence says. */
export interface DueReason {
  readonly code: DueCode;
  /** Its numbers: times, of, points, days, group, place, date. */
  readonly detail: Detail;
}

/** Somebody who needs a word. */
export interface Due {
  readonly person: string;
  /** Gravest first; at least one. */
  readonly reasons: readonly [DueReason, ...DueReason[]];
}
