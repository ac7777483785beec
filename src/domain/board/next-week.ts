/** What the answers of a group suggest for its next week. */
export const WAYS = ['go-on', 'repeat', 'ease', 'stretch'] as const;
export type Way = (typeof WAYS)[number];

/** The numbers that a suggestion leans on, all of the week that is looked at. */
export interface Grounds {
  readonly heard: number;
  readonly of: number;
  readonly rated: number;
  /** People whose median gap was at least two points above the target, and below it. */
  readonly harder: number;
  readonly easier: number;
  /** People who cut a session short. */
  readonly cutShort: number;
  /** People who had as many sessions as the week asks for at least. */
  readonly enough: number;
  readonly niggles: number;
  readonly signs: number;
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
  | 'event-near'
  | 'as-meant';

export interface Suggestion {
  readonly group: string;
  /** The week that was looked at, and the one to decide, both from 1. */
  readonly looked: number;
  readonly next: number;
  readonly way: Way;
  readonly why: WayReason;
  readonly grounds: Grounds;
}
