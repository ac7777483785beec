import { unreachable } from '../../result.ts';
import { ms } from '../../units.ts';
import type { Step } from '../effect.ts';
import type { PlacedEvent, SessionEvent } from '../event.ts';
import { andThen, endEarly, goOn, step } from '../move.ts';
import type { Session } from '../session.ts';
import { toCoolDown } from '../wishes.ts';

/** The lane is gone round this much before its end; behind it lies quiet, so late does no harm. */
const GO_ROUND_BEFORE = ms(1000);

/** On hold: the place is kept, the sound is in the holding lane (or the system took it). */
export function holding(state: Session, event: SessionEvent): Step<Session> {
  if (event.type === 'start' || event.type === 'recovered') return step(state);
  const { wall } = event;
  switch (event.type) {
    case 'tick':
    case 'woke':
    case 'playing':
      return stayInLane(state, event);
    case 'go-on':
      return goOn(state, wall);
    // Headsets and some lock screens send a pause for every press while sound comes out.
    case 'button-pause':
    case 'button-play':
      return andThen(goOn(state, wall), (next) => step({ ...next, wentOnByLock: wall }));
    case 'cool-down':
      return toCoolDown(state, wall);
    case 'end':
      return endEarly(state, wall);
    case 'wrong':
      return step({ ...state, wrong: true });
    case 'all-right':
      return step({ ...state, wrong: false });
    case 'failed':
      return step({ ...state, broken: true });
    case 'paused':
    case 'hold':
    case 'one-more':
    case 'walk-now':
    case 'skip':
    case 'back':
    case 'undo':
    case 'catch-up':
    case 'leave-gap':
      return step(state);
    default:
      return unreachable(event);
  }
}

/** Nothing but the holding lane is ever heard on hold, however long it lasts. */
function stayInLane(state: Session, { wall, track }: PlacedEvent): Step<Session> {
  const { holding: lane } = state.score.layout;
  if (track >= lane.start && track < lane.end - GO_ROUND_BEFORE) return step(state);
  return step({ ...state, moved: { wall, track: lane.start } }, { type: 'seek', to: lane.start });
}
