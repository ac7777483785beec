/** What the answers of a group suggest for its next week. */
export const WAYS = ['go-on', 'repeat', 'ease', 'stretch'] as const;
/** What can be done with the next week: as written, the last again, less, or more. */
export type Way = (typeof WAYS)[number];

/** The numbers that a suggestion leans on, all of the week that is looked at. */
export interface Grounds {
  readonly heard: number;
  readonly of: number;
  readonly rated: number;
  /** People whose median gap was at least two points above the target, and below it. */
  readonly harder: number;
  readonly easier: number;
  /** Of `harder`, those whose gap was at least three points. */
  readonly muchHarder: number;
  /** People who cut a session short. */
  readonly cutShort: number;
  /** People who had as many sessions as the week asks for at least. */
  readonly enough: number;
  /** People with a niggle, with a warning sign, and with either. */
  readonly niggles: number;
  readonly signs: number;
  readonly hurt: number;
  /** Median of the people's gaps, in points. */
  readonly gap?: number;
}

/** Why this and nothing else. */
export type WayReason =
  | 'too-few'
  | 'harder'
  | 'much-harder'
  | 'niggles'
  | 'cut-short'
  | 'thin'
  | 'easier'
  /** It was harder or thinner than meant, and the next week asks for less as it is written. */
  | 'lighter'
  /** Easier, and still nothing is raised: the event is near, a sign stands, it would be too much. */
  | 'event-near'
  | 'sign'
  | 'limits'
  | 'as-meant';

/** What to do with a group's next week, and why. The leader decides. */
export interface Suggestion {
  readonly group: string;
  /** The week that was looked at, and the one to decide, both from 1. */
  readonly looked: number;
  readonly next: number;
  readonly way: Way;
  readonly why: WayReason;
  readonly grounds: Grounds;
}
