import { ms } from '../../units.ts';
import type { Step } from '../effect.ts';
import type { SessionEvent } from '../event.ts';
import { step } from '../move.ts';
import type { Session } from '../session.ts';

/** The last words are over well within this, and quiet follows them. */
const LAST_WORDS = ms(12_000);

/** Finished or ended early: nothing is counted any more, and the sound ends after its last words. */
export function over(state: Session, event: SessionEvent): Step<Session> {
  if (event.type === 'start' || event.type === 'recovered' || state.hushed) return step(state);
  if (event.type === 'button-pause' || event.type === 'hold') return hush(state);
  const { layout } = state.score;
  const end =
    state.lane === 'cool-down' ? (layout.coolDown?.end ?? layout.session) : layout.session;
  const sounding = event.track >= end && event.track < end + LAST_WORDS;
  return sounding ? step(state) : hush(state);
}

const hush = (state: Session): Step<Session> => step({ ...state, hushed: true }, { type: 'pause' });
