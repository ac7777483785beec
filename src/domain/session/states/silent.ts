import { unreachable } from '../../result.ts';
import { ms } from '../../units.ts';
import type { Step } from '../effect.ts';
import type { PlacedEvent, SessionEvent } from '../event.ts';
import { follow, GAP_MS, silentSince, withGap } from '../follow.ts';
import { andThen, endEarly, goOn, hold, runFrom, step } from '../move.ts';
import type { Session } from '../session.ts';
import { catchUp, toCoolDown } from '../wishes.ts';

/** A move that only running sound makes, while no event has said that it plays again. */
const SURELY_PLAYS_MS = 1000;

/**
 * No sound, and not by our doing: `interrupted` when the system paused it, `stalled` when it
 * stands although it should play. Only a person starts it again; when the system does, the
 * session goes on from where it is and tells the gap.
 */
const silent =
  (cameBack: (state: Session, event: PlacedEvent) => boolean) =>
  (state: Session, event: SessionEvent): Step<Session> => {
    if (event.type === 'start' || event.type === 'recovered') return step(state);
    const { wall } = event;
    switch (event.type) {
      case 'tick':
      case 'playing':
        return cameBack(state, event) ? goesOnByItself(state, event) : step(state);
      case 'woke':
        return cameBack(state, event) ? goesOnByItself(state, event) : tellGap(state, wall);
      case 'paused':
        return step(state.name === 'stalled' ? { ...state, name: 'interrupted' } : state);
      case 'failed':
        return step({ ...state, name: 'stalled', broken: true });
      case 'go-on':
      case 'leave-gap':
      case 'button-play':
        return goOn(state, wall);
      // The silent element is moved too: if the system gives the sound back, it is the hold's.
      case 'hold':
        return hold(state, wall, false);
      case 'wrong':
        return hold(state, wall, true);
      case 'cool-down':
        return toCoolDown(state, wall);
      case 'catch-up':
        return catchUp(state, wall, ms(Math.max(0, wall - silentSince(state))));
      case 'end':
        return endEarly(state, wall);
      case 'button-pause':
      case 'one-more':
      case 'walk-now':
      case 'skip':
      case 'back':
      case 'undo':
      case 'all-right':
        return step(state);
      default:
        return unreachable(event);
    }
  };

const forwardBy = (state: Session, event: PlacedEvent): number => event.track - state.moved.track;

/** The system gave the sound back, before or without a person's word. */
function goesOnByItself(state: Session, event: PlacedEvent): Step<Session> {
  const at = { wall: event.wall, track: state.track };
  const lost = event.wall - state.moved.wall - Math.max(0, forwardBy(state, event));
  const back = { ...runFrom(state, state.lane, at), broken: false };
  const told = lost > GAP_MS ? withGap(back, state, at, lost) : back;
  return andThen(step(told), (next) => follow(next, event));
}

/** Who comes back to a silent phone is told since when it has been silent. */
function tellGap(state: Session, wall: number): Step<Session> {
  const lost = wall - state.moved.wall;
  if (lost <= GAP_MS) return step(state);
  return step(withGap(state, state, { wall, track: state.track }, lost));
}

/** A call or another app has the sound. */
export const interrupted = silent(
  (state, event) => event.type === 'playing' || forwardBy(state, event) > SURELY_PLAYS_MS,
);

/** The element says that it plays, and stands. */
export const stalled = silent((state, event) => forwardBy(state, event) > 0);
