import { type Ms, ms } from '../units.ts';
import { endStretch } from './credit.ts';
import type { Step } from './effect.ts';
import type { RecoveredEvent } from './event.ts';
import { laneStart, step, without } from './move.ts';
import { isUnderWay, isWaiting, type Session } from './session.ts';
import { placeToWait } from './wait.ts';

/**
 * A session that was cut off is silent at its place and waits for a person. The track may have
 * been composed anew, with its lanes elsewhere: places in them are carried over by their distance.
 */
export function recover(state: Session, event: RecoveredEvent): Step<Session> {
  if (!isUnderWay(state)) return step(state);
  const before = state.score.layout;
  const score = { ...state.score, layout: event.layout };
  const shift = laneStart(event.layout, state.lane) - laneStart(before, state.lane);
  const waits = isWaiting(state);
  const track = waits ? placeToWait({ ...state, score }, event.wall) : ms(state.track + shift);
  const next: Session = {
    ...without(state, 'undo', 'gap', 'wentOnByLock'),
    name: waits ? 'waiting-silent' : 'interrupted',
    score,
    medium: event.medium,
    track,
    moved: { wall: event.wall, track },
    credit: endStretch(state.credit),
    wrong: false,
    broken: false,
    fresh: true,
    ...shifted(state.extraUntil, shift),
  };
  return event.medium === 'screen' ? step(next, { type: 'stay-awake', on: true }) : step(next);
}

const shifted = (extraUntil: Ms | undefined, shift: number): { extraUntil?: Ms } =>
  extraUntil === undefined ? {} : { extraUntil: ms(extraUntil + shift) };
