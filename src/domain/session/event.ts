import type { Ms } from '../units.ts';
import type { About, Medium, Score } from './session.ts';

/** When something happened (UTC milliseconds) and where the track was. */
interface At {
  readonly wall: number;
  readonly track: Ms;
}

/** What the audio element, or the clock of a session on the screen, says. */
export const SIGNS = [
  /** A hint that time may have passed. */
  'tick',
  /** The page is awake after it may have slept. */
  'woke',
  /** Sound comes out. */
  'playing',
  /** The element stands still, and we did not ask for it; or it refused to start. */
  'paused',
  /** The element cannot go on by itself. */
  'failed',
] as const;

/** What a person asks for on the screen. */
export const WISHES = [
  'hold',
  'go-on',
  'one-more',
  'walk-now',
  'skip',
  'back',
  'undo',
  'cool-down',
  'end',
  'wrong',
  'all-right',
  'catch-up',
  'leave-gap',
] as const;

/** Buttons of the lock screen and the headset: which of two things they mean depends on the state. */
export const BUTTONS = ['button-pause', 'button-play'] as const;

/** What the world says. */
export type Sign = (typeof SIGNS)[number];
/** What a person asks for. */
export type Wish = (typeof WISHES)[number];
/** A media key, which means one thing or another by the state. */
export type Button = (typeof BUTTONS)[number];

/** An event that tells where the track is. */
export type PlacedEvent = At & { readonly type: Sign | Wish | Button };

/** The tap. Before `about.startedAt` it begins a wait for that moment. */
export interface StartEvent {
  readonly type: 'start';
  readonly wall: number;
  readonly about: About;
  readonly score: Score;
  readonly medium: Medium;
}

/** The app was closed or killed and is open again; the track may have been composed anew. */
export interface RecoveredEvent {
  readonly type: 'recovered';
  readonly wall: number;
  readonly layout: Score['layout'];
  readonly medium: Medium;
}

/** Everything that can happen to a session. */
export type SessionEvent = StartEvent | RecoveredEvent | PlacedEvent;
