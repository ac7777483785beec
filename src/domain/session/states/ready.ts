import { ms } from '../../units.ts';
import { beginStretch, noCredit } from '../credit.ts';
import type { Step } from '../effect.ts';
import type { SessionEvent } from '../event.ts';
import { step } from '../move.ts';
import type { Session } from '../session.ts';

/** Composed and waiting for the tap. Nothing but that tap begins a session. */
export function ready(state: Session, event: SessionEvent): Step<Session> {
  if (event.type !== 'start') return step(state);
  const at = { wall: event.wall, track: ms(0) };
  const { about, score, medium } = event;
  const credit = beginStretch(noCredit, 'plan', at);
  const next: Session = { ...state, name: 'running', about, score, medium, moved: at, credit };
  return medium === 'screen'
    ? step(next, { type: 'play' }, { type: 'stay-awake', on: true })
    : step(next, { type: 'play' });
}
