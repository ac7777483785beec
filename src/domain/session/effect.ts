import type { Ms } from '../units.ts';
import type { SessionEvent } from './event.ts';

/** How the next segment compares with the one before. */
export type Change = 'harder' | 'easier' | 'same';

/** What is to be done in the world. The reducer only says it. */
export type Effect =
  /** Let the sound be heard; only ever in answer to a person. */
  | { readonly type: 'play' }
  | { readonly type: 'pause' }
  | { readonly type: 'seek'; readonly to: Ms }
  /** A new element with the same track, at this place and playing. */
  | { readonly type: 'rebuild'; readonly at: Ms }
  /** To be written before anything that comes later; `strict` waits for the disk. */
  | { readonly type: 'journal'; readonly event: SessionEvent; readonly strict: boolean }
  /** Keep the screen on (or no longer). */
  | { readonly type: 'stay-awake'; readonly on: boolean }
  /** A boundary was passed while going on. */
  | { readonly type: 'boundary'; readonly change: Change }
  /** The session is over: log it and close the journal, in one transaction. */
  | { readonly type: 'close' }
  /** It was left before it began: close the journal, there is nothing to log. */
  | { readonly type: 'leave' };

/** A new state and what comes of it. */
export interface Step<State> {
  readonly state: State;
  readonly effects: readonly Effect[];
}
