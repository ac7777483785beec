import { unreachable } from '../../result.ts';
import { endStretch } from '../credit.ts';
import type { Step } from '../effect.ts';
import type { PlacedEvent, SessionEvent } from '../event.ts';
import { follow } from '../follow.ts';
import { andThen, endEarly, hold, step, without } from '../move.ts';
import type { Session } from '../session.ts';
import { back, catchUp, oneMore, skip, toCoolDown, undo, walkNow } from '../wishes.ts';
import { stalled } from './silent.ts';

/** A pause this soon after the lock screen's button ended a hold was meant to be one. */
const BUTTON_WAS_SYSTEM_MS = 1500;

/** Going on. Every event first tells where the sound is, then what is wanted. */
export function running(state: Session, event: SessionEvent): Step<Session> {
  if (event.type === 'start' || event.type === 'recovered') return step(state);
  const followed = follow(state, event);
  if (followed.state.name === 'running') return andThen(followed, (next) => act(next, event));
  // A person's hold, end or alarm is obeyed even when the same moment shows that the sound stood.
  if (followed.state.name === 'stalled') return andThen(followed, (next) => stalled(next, event));
  return followed;
}

function act(state: Session, event: PlacedEvent): Step<Session> {
  const { wall } = event;
  switch (event.type) {
    case 'tick':
    case 'woke':
    case 'playing':
    case 'go-on':
    case 'all-right':
    case 'button-play':
      return step(state);
    case 'paused':
      return paused(state, wall);
    case 'failed':
      return step({ ...state, name: 'stalled', broken: true, credit: endStretch(state.credit) });
    case 'hold':
    case 'button-pause':
      return hold(state, wall, false);
    case 'wrong':
      return hold(state, wall, true);
    case 'one-more':
      return oneMore(state, wall);
    case 'walk-now':
      return walkNow(state, wall);
    case 'skip':
      return skip(state, wall);
    case 'back':
      return back(state, wall);
    case 'undo':
      return undo(state, wall);
    case 'cool-down':
      return toCoolDown(state, wall);
    case 'end':
      return endEarly(state, wall);
    case 'catch-up':
      return state.gap ? catchUp(state, wall, state.gap.lost) : step(state);
    case 'leave-gap':
      return step(without(state, 'gap'));
    default:
      return unreachable(event.type);
  }
}

/**
 * The system took the sound. When it did so with the pause button, which had just ended a hold,
 * the hold comes back: nobody who stands and telephones is to be told to run.
 */
function paused(state: Session, wall: number): Step<Session> {
  const { wentOnByLock } = state;
  if (wentOnByLock !== undefined && wall - wentOnByLock <= BUTTON_WAS_SYSTEM_MS) {
    return hold(state, wall, false);
  }
  return step({ ...without(state, 'undo'), name: 'interrupted', credit: endStretch(state.credit) });
}
