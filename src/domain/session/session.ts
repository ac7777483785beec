import type { Timeline } from '../timeline/timeline.ts';
import type { TrackLayout } from '../track/layout.ts';
import type { Ms, Percent } from '../units.ts';
import type { Credit } from './credit.ts';

/** Where the session is heard (one audio element) or seen (the monotonic clock). */
export type Medium = 'sound' | 'screen';

/**
 * A session is logged; a pocket check only says what the phone did; what a leader leads for others
 * is nobody's own.
 */
export type Purpose = 'session' | 'pocket-check' | 'lead';

/** Whose session it is and when it began: what the journal keeps and the log entry needs. */
export interface About {
  readonly id: string;
  readonly purpose: Purpose;
  readonly programme: { readonly id: string; readonly revision: number; readonly title: string };
  readonly group: { readonly id: string; readonly name: string };
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
  readonly plan: string;
  readonly target: Percent;
  /**
   * UTC milliseconds, with the offset, zone and date of the place where it started. While people
   * wait, the start that was agreed.
   */
  readonly startedAt: number;
  readonly offsetMinutes: number;
  readonly zone: string;
  readonly localDate: string;
}

/** What is played: the plan in time, and where things lie in its track. */
export interface Score {
  readonly timeline: Timeline;
  readonly layout: TrackLayout;
}

/** Every state that a session may be in. */
export type StateName =
  | 'ready'
  | 'waiting'
  | 'waiting-silent'
  | 'running'
  | 'holding'
  | 'interrupted'
  | 'stalled'
  | 'finished'
  | 'ended-early'
  | 'left';

/** The stretches of a track in which a session may be. */
export type LaneName = 'session' | 'one-more' | 'cool-down' | 'holding';

/** The lanes in which a person moves. */
export type MovingLane = Exclude<LaneName, 'holding'>;

/** A wall time (UTC milliseconds) and the track's place at that moment. */
export interface Moment {
  readonly wall: number;
  readonly track: Ms;
}

/** A stretch of wall time in which the sound did not move as it should. */
export interface Gap {
  readonly stoppedAt: number;
  readonly cameBackAt: number;
  /** Place in the session at which it stood. */
  readonly position: Ms;
  /** Place in the track at which it stood, in whatever lane. */
  readonly track: Ms;
  /** How much less than the wall clock the sound moved: what catching up makes good. */
  readonly lost: Ms;
}

/** What a skip or walk-now left, for as long as it can be taken back. */
export interface Undo {
  readonly what: 'skip' | 'walk-now';
  readonly place: Ms;
  readonly at: number;
}

/** The whole state of one session. Lanes and tracks are in track time, `place` in session time. */
export interface Session {
  readonly name: StateName;
  readonly about: About;
  readonly score: Score;
  readonly medium: Medium;
  /** Where the sound is, or is to be once it can be heard again. */
  readonly lane: MovingLane;
  /** Place in the session; while another lane is heard, the place to go back to. */
  readonly place: Ms;
  /**
   * Last known place in `lane`, in track time; in the session's lane it is `place`, and below 0
   * while people wait for the start.
   */
  readonly track: Ms;
  /** When the place was last seen to move, and where it was then. */
  readonly moved: Moment;
  /** The track was read in anew, and has not been seen to move since. */
  readonly fresh?: true;
  /** In the one-minute-more lane: the place in the track at which the minute is over. */
  readonly extraUntil?: Ms;
  readonly credit: Credit;
  readonly undo?: Undo;
  readonly gap?: Gap;
  /** "Something is wrong" is open. */
  readonly wrong: boolean;
  /** The element no longer obeys: it is to be built anew at the next go-on. */
  readonly broken: boolean;
  /** When the lock screen's button ended a hold: a pause right after it is the system's own. */
  readonly wentOnByLock?: number;
  /** When a wait was last moved to where the wall clock has it. */
  readonly settledAt?: number;
  readonly endedAt?: number;
  /** The end's words have been left to sound and the track was stopped. */
  readonly hushed: boolean;
  /** Wall time of the last event that was written to the journal. */
  readonly writtenAt: number;
  /** `moved` as it was then: the journal knows of no later move. */
  readonly writtenMove: Moment;
  /** Wall time of the last event. */
  readonly seenAt: number;
}

/** The session is over, one way or the other; `left` before it began. */
export const isOver = (session: Session): boolean =>
  session.name === 'finished' || session.name === 'ended-early' || session.name === 'left';

/** Sound was asked for of a track that may still be being read. */
export const isBeginning = (session: Session): boolean =>
  session.fresh === true && (session.name === 'running' || session.name === 'waiting');

/** People wait for a start that was agreed ahead, heard or in silence. */
export const isWaiting = (session: Session): boolean =>
  session.name === 'waiting' || session.name === 'waiting-silent';

/** The session has begun, or is waited for, and is not over. */
export const isUnderWay = (session: Session): boolean =>
  session.name !== 'ready' && !isOver(session);
