import { ms } from '../../units.ts';
import { beginStretch, noCredit } from '../credit.ts';
import type { Effect, Step } from '../effect.ts';
import type { SessionEvent, StartEvent } from '../event.ts';
import { step } from '../move.ts';
import type { Session } from '../session.ts';
import { placeToWait } from '../wait.ts';

/** Composed and waiting for the tap. Nothing but that tap begins a session, or the wait for one. */
export function ready(state: Session, event: SessionEvent): Step<Session> {
  if (event.type !== 'start') return step(state);
  const { about, score, medium } = event;
  const next: Session = { ...state, about, score, medium };
  const awake: Effect[] = medium === 'screen' ? [{ type: 'stay-awake', on: true }] : [];
  return event.wall < about.startedAt ? wait(next, event, awake) : begin(next, event, awake);
}

function begin(state: Session, { wall }: StartEvent, awake: readonly Effect[]): Step<Session> {
  const at = { wall, track: ms(0) };
  const credit = beginStretch(noCredit, 'plan', at);
  const next: Session = { ...state, name: 'running', moved: at, fresh: true, credit };
  return step(next, { type: 'play' }, ...awake);
}

/** The sound is put where it will have run into the session by itself when the time has come. */
function wait(state: Session, { wall }: StartEvent, awake: readonly Effect[]): Step<Session> {
  const to = placeToWait(state, wall);
  const moved = { wall, track: to };
  const next: Session = { ...state, name: 'waiting', track: to, moved, fresh: true };
  return step(next, { type: 'seek', to }, { type: 'play' }, ...awake);
}
