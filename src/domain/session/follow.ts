import { ms } from '../units.ts';
import { beginStretch, endStretch, goOnTo, isSteady } from './credit.ts';
import type { Step } from './effect.ts';
import { andThen, finish, jump, laneLimit, step, without } from './move.ts';
import { changeTo, segmentHere } from './places.ts';
import { isBeginning, type Moment, type Session } from './session.ts';
import { over } from './states/over.ts';

/** The sound stands still for this long: it has stalled. */
export const STALLED_AFTER_MS = 3000;
/**
 * The same for a track that was read in anew: a slow phone takes seconds for that, and who asked
 * for it has the phone in the hand. Nothing of the session is lost by that, so it is no gap.
 */
export const BEGINS_WITHIN_MS = 8000;
/** A gap that a person is told of. */
export const GAP_MS = 3000;
/** A place may be reported this much earlier than before without having been moved. */
export const BACKWARD_JITTER_MS = 500;
/** A signal for a boundary that comes later than this would only confuse. */
export const BOUNDARY_LATE_MS = 1500;

/** How long a sound may stand on one place, in milliseconds. */
export const patienceWith = (state: Session): number =>
  isBeginning(state) ? BEGINS_WITHIN_MS : STALLED_AFTER_MS;

/**
 * What a moment tells of a running session: how far it came, whether the sound stood still,
 * whether a lane or the session is over. Everything follows from the place, nothing is counted.
 */
export function follow(state: Session, at: Moment): Step<Session> {
  const forward = at.track - state.moved.track;
  if (forward <= 0 && forward > -BACKWARD_JITTER_MS) return standing(state, at);
  return andThen(moved(state, at), (next) => laneOver(next, at));
}

function standing(state: Session, at: Moment): Step<Session> {
  const since = at.wall - state.moved.wall;
  if (since < patienceWith(state)) return step(state);
  return step({ ...state, name: 'stalled', broken: true, credit: endStretch(state.credit) });
}

/** The place moved: what was gone through is credited, a gap is noticed, a boundary signalled. */
function moved(state: Session, at: Moment): Step<Session> {
  const heard = { wall: at.wall, track: ms(Math.min(at.track, laneLimit(state))) };
  const credit = goOnTo(state.credit, heard);
  const place = state.lane === 'session' ? heard.track : state.place;
  const next = { ...without(state, 'fresh'), place, track: heard.track, moved: at, credit };
  if (!isSteady(state.moved, at)) return step(next);
  const lost = at.wall - state.moved.wall - (at.track - state.moved.track);
  if (lost > (isBeginning(state) ? BEGINS_WITHIN_MS : GAP_MS))
    return step(withGap(afterGap(next, at.wall), state, at, lost));
  return step(next, ...boundary(state, next));
}

/**
 * Since when the sound has not moved. A gap that nobody has answered, with no move since, goes on:
 * an element may say that it plays, and stand.
 */
export const silentSince = ({ gap, track, moved: { wall } }: Session): number =>
  gap?.track === track ? gap.stoppedAt : wall;

/**
 * Remembers a gap to be told.
 *
 * @param lost since the place last moved: how much less than the wall clock it did
 */
export function withGap(next: Session, before: Session, at: Moment, lost: number): Session {
  const stoppedAt = silentSince(before);
  const all = ms(lost + before.moved.wall - stoppedAt);
  const { place: position, track } = before;
  return { ...next, gap: { stoppedAt, cameBackAt: at.wall, position, track, lost: all } };
}

/** What comes after a gap is credited anew. */
function afterGap(next: Session, wall: number): Session {
  const counts = next.lane === 'session' ? 'plan' : 'extra';
  return { ...next, credit: beginStretch(next.credit, counts, { wall, track: next.track }) };
}

function boundary(before: Session, after: Session) {
  if (after.lane !== 'session') return [];
  const { timeline } = after.score;
  const segment = segmentHere(timeline, after.place);
  const passed = before.place < segment.start;
  if (!passed || after.place - segment.start > BOUNDARY_LATE_MS) return [];
  return [{ type: 'boundary', change: changeTo(timeline, segment) } as const];
}

/** The session is over; when this was noticed late, its last words have been heard already. */
const end = (state: Session, at: Moment): Step<Session> =>
  andThen(finish(state, at.wall), (finished) => over(finished, { type: 'tick', ...at }));

/** Leaves a lane that is over. A late call has cost quiet, and no more. */
function laneOver(state: Session, at: Moment): Step<Session> {
  const { oneMore } = state.score.layout;
  const isOver = at.track >= laneLimit(state);
  if (state.lane !== 'one-more') return isOver ? end(state, at) : step(state);
  if (isOver || at.track < oneMore.start) return jump(state, at.wall, 'session', state.place);
  if (at.track < oneMore.end) return step(state);
  // More than a minute is owed: the quiet minute is gone round once more.
  const ahead = laneLimit(state) - at.track;
  const round: Session = { ...state, extraUntil: ms(oneMore.minute.start + ahead) };
  return jump(round, at.wall, 'one-more', oneMore.minute.start);
}
