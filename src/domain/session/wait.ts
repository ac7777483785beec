import { localDate } from '../log/local-date.ts';
import { type Ms, ms } from '../units.ts';
import { isSteady } from './credit.ts';
import type { Step } from './effect.ts';
import { BOUNDARY_LATE_MS, GAP_MS } from './follow.ts';
import { jump, runFrom, step, without } from './move.ts';
import type { Moment, Session } from './session.ts';

/** The longest that a start can be ahead of the tap. */
export const LONGEST_WAIT = ms(1_800_000);
/**
 * A wait this far from where the wall clock has it is put right. A phone tells its place in steps
 * of up to a quarter of a second, so less than twice that may be no error at all.
 */
export const OFF_MS = 500;
/** A phone that takes long to seek is not sought in again and again. */
const SETTLE_AGAIN_MS = 5000;
/** Around a sound, for a place that is told late. */
const BESIDE_MS = 250;

/** Where the wall clock has a wait: below 0 until the start. */
const meantAt = (state: Session, wall: number): number => wall - state.about.startedAt;

/** The place in the track at which to wait, within its lead-in; 0 once the start has passed. */
export const placeToWait = (state: Session, wall: number): Ms =>
  ms(Math.min(0, Math.max(-(state.score.layout.leadIn?.length ?? 0), meantAt(state, wall))));

/** The session as it is when it begins at a moment: that is its start, whatever was agreed. */
export function begun(state: Session, wall: number): Session {
  const date = localDate(wall, state.about.offsetMinutes);
  const about = { ...state.about, startedAt: wall, localDate: date };
  return { ...without(state, 'settledAt', 'gap'), about };
}

/** From its beginning, at once. */
export const beginNow = (state: Session, wall: number): Step<Session> =>
  jump(begun(state, wall), wall, 'session', ms(0));

/**
 * What the place of a wait tells beside the wall clock: wait on, wait on somewhere else, or the
 * session has begun.
 *
 * @param at where the sound is and moves
 */
export function settle(state: Session, at: Moment): Step<Session> {
  const meant = meantAt(state, at.wall);
  const isOff = Math.abs(at.track - meant) > OFF_MS;
  const here: Session = { ...state, track: ms(Math.min(0, at.track)), moved: at };
  if (meant < 0 && isOff) return putRight(here, at);
  if (at.track >= 0 && isSteady(state.moved, at)) return ranInto(state, at, isOff);
  if (at.track < 0 && !isOff) return step(here);
  return meant <= GAP_MS ? joinAt(here, at.wall, meant) : tooLate(state, at, meant);
}

/** To where the wall clock has it, as soon as nothing is cut off by that. */
function putRight(state: Session, { wall, track }: Moment): Step<Session> {
  const to = placeToWait(state, wall);
  const lately =
    state.settledAt !== undefined && Math.abs(wall - state.settledAt) < SETTLE_AGAIN_MS;
  const later = lately || !isQuiet(state, track) || !isQuiet(state, to);
  // Where the session would be heard before its time there is nothing to be careful of.
  if (track < 0 && later) return step(state);
  const next = { ...state, track: to, moved: { wall, track: to }, settledAt: wall };
  return step(next, { type: 'seek', to });
}

/** Where a gap lies in which the beginning was missed. */
const AT_START = { position: ms(0), track: ms(0) } as const;

const isQuiet = (state: Session, at: number): boolean =>
  !(state.score.layout.leadIn?.sounds ?? []).some(
    ({ start, end }) => at >= start - BESIDE_MS && at < end + BESIDE_MS,
  );

/** The sound ran out of the lead-in into the session, whether or not anybody looked. */
function ranInto(state: Session, at: Moment, isOff: boolean): Step<Session> {
  const agreed = state.about.startedAt;
  const start = { wall: at.wall - at.track, track: ms(0) };
  const next = runFrom(begun(state, isOff ? start.wall : agreed), 'session', start);
  const late = start.wall - agreed;
  const gap = { ...AT_START, stoppedAt: agreed, cameBackAt: start.wall, lost: ms(late) };
  const told = late > GAP_MS ? { ...next, gap } : next;
  return at.track > BOUNDARY_LATE_MS
    ? step(told)
    : step(told, { type: 'boundary', change: 'harder' });
}

/** A moment late: in step with the others, for the first words' sake no later. */
const joinAt = (state: Session, wall: number, meant: number): Step<Session> =>
  jump(without(state, 'settledAt'), wall, 'session', ms(meant));

/** The others have long begun: from the beginning, and what was missed can be caught up. */
function tooLate(state: Session, { wall }: Moment, meant: number): Step<Session> {
  const { state: next, effects } = beginNow(state, wall);
  const stoppedAt = state.moved.wall;
  const gap = { ...AT_START, stoppedAt, cameBackAt: wall, lost: ms(meant) };
  return step({ ...next, gap }, ...effects);
}
