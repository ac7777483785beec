import { unreachable } from '../../result.ts';
import { ms } from '../../units.ts';
import type { Effect, Step } from '../effect.ts';
import type { PlacedEvent, SessionEvent } from '../event.ts';
import { BACKWARD_JITTER_MS, patienceWith } from '../follow.ts';
import { andThen, hold, soundAt, step, without } from '../move.ts';
import type { Session } from '../session.ts';
import { beginNow, begun, placeToWait, settle } from '../wait.ts';
import { catchUp } from '../wishes.ts';
import { running } from './running.ts';

/** A move that only running sound makes, while no event has said that it plays again. */
const SURELY_PLAYS_MS = 1000;

/**
 * The sound is in the lead-in and will run into the session by itself. Every event first tells
 * where it is; the agreed time does not wait, so that there is nothing to hold.
 */
export function waiting(state: Session, event: SessionEvent): Step<Session> {
  if (event.type === 'start' || event.type === 'recovered') return step(state);
  const looked = look(state, event);
  if (looked.state.name === 'waiting') return andThen(looked, (next) => act(next, event));
  if (looked.state.name === 'waiting-silent') {
    return andThen(looked, (next) => waitingSilent(next, event));
  }
  // It has begun: where a seek was made, the place that the event tells is the one before it.
  const sought = looked.effects.some(({ type }) => type === 'seek');
  const at = sought ? { ...event, track: looked.state.track } : event;
  return andThen(looked, (next) => running(next, at));
}

function look(state: Session, at: PlacedEvent): Step<Session> {
  const forward = at.track - state.moved.track;
  const moved = forward > 0 || forward <= -BACKWARD_JITTER_MS;
  if (moved) return settle(without(state, 'fresh'), { wall: at.wall, track: at.track });
  if (at.wall - state.moved.wall < patienceWith(state)) return step(state);
  return step({ ...state, name: 'waiting-silent', broken: true });
}

function act(state: Session, event: PlacedEvent): Step<Session> {
  switch (event.type) {
    case 'tick':
    case 'woke':
    case 'playing':
    // A slip on a lock screen or a headset must neither end a wait nor begin a session.
    case 'hold':
    case 'button-pause':
    case 'button-play':
    case 'skip':
    case 'back':
    case 'one-more':
    case 'walk-now':
    case 'undo':
    case 'cool-down':
    case 'all-right':
    case 'catch-up':
    case 'leave-gap':
      return step(state);
    case 'paused':
      return step({ ...state, name: 'waiting-silent' });
    case 'failed':
      return step({ ...state, name: 'waiting-silent', broken: true });
    case 'go-on':
      return beginNow(state, event.wall);
    case 'wrong':
      return wrong(state, event.wall);
    case 'end':
      return leave(state, event.wall);
    default:
      return unreachable(event.type);
  }
}

/** No sound in a wait, and not by our doing. The wall clock goes on; only a person starts sound. */
export function waitingSilent(state: Session, event: SessionEvent): Step<Session> {
  if (event.type === 'start' || event.type === 'recovered') return step(state);
  const { wall } = event;
  switch (event.type) {
    case 'tick':
    case 'woke':
    case 'playing':
      return cameBack(state, event)
        ? settle({ ...state, name: 'waiting', broken: false }, { wall, track: event.track })
        : step(state);
    case 'failed':
      return step({ ...state, broken: true });
    case 'go-on':
    case 'leave-gap':
    case 'button-play':
      return wall < state.about.startedAt ? waitOn(state, wall) : fromTheStart(state, wall);
    case 'catch-up':
      return wall < state.about.startedAt ? step(state) : join(state, wall);
    case 'wrong':
      return wrong(state, wall);
    case 'end':
      return leave(state, wall);
    case 'paused':
    case 'hold':
    case 'button-pause':
    case 'skip':
    case 'back':
    case 'one-more':
    case 'walk-now':
    case 'undo':
    case 'cool-down':
    case 'all-right':
      return step(state);
    default:
      return unreachable(event);
  }
}

/** An element that broke says that it plays, and stands: only a move is believed. */
function cameBack(state: Session, event: PlacedEvent): boolean {
  const forward = event.track - state.moved.track;
  if (state.broken) return forward > 0;
  return event.type === 'playing' || forward > SURELY_PLAYS_MS;
}

function waitOn(state: Session, wall: number): Step<Session> {
  const to = placeToWait(state, wall);
  const moved = { wall, track: to };
  return soundAt({ ...state, name: 'waiting', track: to, moved }, to);
}

function fromTheStart(state: Session, wall: number): Step<Session> {
  return soundAt(beginNow(state, wall).state, ms(0));
}

/** In step with those who began at the agreed time, which stays the session's start. */
const join = (state: Session, wall: number): Step<Session> =>
  catchUp({ ...state, track: ms(0) }, wall, ms(wall - state.about.startedAt));

/** Held at its beginning, with what to do in sight: the agreed time is let go. */
const wrong = (state: Session, wall: number): Step<Session> =>
  hold({ ...begun(state, wall), track: ms(0) }, wall, true);

/** Left before it began: nothing was done, and nothing is logged. */
function leave(state: Session, wall: number): Step<Session> {
  const next: Session = { ...state, name: 'left', hushed: true, endedAt: wall };
  const asleep: Effect[] = state.medium === 'screen' ? [{ type: 'stay-awake', on: false }] : [];
  return step(next, { type: 'pause' }, ...asleep, { type: 'leave' });
}
