/**
 * How much a board holds. Whoever has a programme has the leader's public key and can seal as many
 * answers as they like: without a bound one of them could fill the device.
 */
export const CAPACITY = {
  /**
   * Of one programme. Ten times the largest club that this was asked to carry (500), and at six
   * sessions each still some tens of megabytes.
   */
  people: 5_000,
  /** Of one person in one programme: a programme has at most 52 weeks of 7 sessions, 364. */
  sessions: 1_000,
  /** Groups that something was said of: 8 in a revision, and revisions may rename them all. */
  groups: 64,
  /** People of one programme who were forgotten. */
  forgotten: 20_000,
} as const;

/** A clock may be wrong by a zone's width, and by a day where nobody set the date. Longer is no clock. */
export const AHEAD_MS = 86_400_000;
