import { isRunning } from '../programme/plan.ts';
import { type Ms, ms } from '../units.ts';
import type { Step } from './effect.ts';
import { coolDownGoal, finish, jump, sound, step, without } from './move.ts';
import {
  backFrom,
  COUNTDOWN_ROOM,
  isEasierThanNeighbour,
  nextWalk,
  segmentHere,
} from './places.ts';
import type { MovingLane, Session } from './session.ts';

/** How long a skip or a walk-now can be taken back. */
export const UNDO_MS = 10_000;
/** What "one minute more" adds, whatever its words take of it. */
export const ONE_MORE = ms(60_000);

/** Where `skip` leads: the next segment. None from the last one: there is `end` for that. */
export function skipGoal(state: Session): Ms | undefined {
  if (state.lane === 'cool-down') return undefined;
  const { timeline } = state.score;
  return timeline.segments[segmentHere(timeline, state.place).index + 1]?.start;
}

/** Where `walk now` leads: the next segment that is walked, or the five minutes of easy walk. */
export function walkNowGoal(state: Session): { lane: MovingLane; to: Ms } | undefined {
  const { timeline, layout } = state.score;
  const segment = segmentHere(timeline, state.place);
  if (state.lane === 'cool-down' || !isRunning(segment.activity)) return undefined;
  const walk = nextWalk(timeline, segment);
  if (walk !== undefined) return { lane: 'session', to: walk.start };
  return layout.coolDown && { lane: 'cool-down', to: layout.coolDown.start };
}

/** Whether a minute can be added here: in a segment easier than a neighbour. */
export const mayHaveOneMore = (state: Session): boolean =>
  state.lane !== 'cool-down' &&
  isEasierThanNeighbour(state.score.timeline, segmentHere(state.score.timeline, state.place));

/** Whether a skip or a walk-now can still be taken back. */
export const mayUndo = (state: Session, wall: number): boolean =>
  state.undo !== undefined && wall >= state.undo.at && wall - state.undo.at <= UNDO_MS;

/**
 * The minute's lane, then back to the place. Near the segment's end the place moves back so that
 * the countdown is heard, and the lane is left that much sooner: the segment becomes one minute
 * longer, no more and no less. Asked for again within the minute, it adds another.
 */
export function oneMore(state: Session, wall: number): Step<Session> {
  if (!mayHaveOneMore(state)) return step(state);
  const { oneMore: lane } = state.score.layout;
  const owed = state.lane === 'one-more' ? (state.extraUntil ?? state.track) - state.track : 0;
  const segment = segmentHere(state.score.timeline, state.place);
  const place = ms(Math.min(state.place, Math.max(segment.start, segment.end - COUNTDOWN_ROOM)));
  const extraUntil = ms(lane.start + ONE_MORE + Math.max(0, owed) - (state.place - place));
  const next = { ...without(state, 'gap', 'undo'), place, extraUntil };
  return jump(next, wall, 'one-more', lane.start);
}

/** Goes to the next segment; nothing happens in the last one. */
export function skip(state: Session, wall: number): Step<Session> {
  const to = skipGoal(state);
  if (to === undefined) return step(state);
  const next = { ...without(state, 'gap'), undo: { what: 'skip', place: state.place, at: wall } };
  return jump(next as Session, wall, 'session', to);
}

/** Goes to where `walkNowGoal` says; nothing happens where there is none. */
export function walkNow(state: Session, wall: number): Step<Session> {
  const goal = walkNowGoal(state);
  if (goal === undefined) return step(state);
  const undo = { what: 'walk-now', place: state.place, at: wall } as const;
  return jump({ ...without(state, 'gap'), undo }, wall, goal.lane, goal.to);
}

/** Takes a skip or a walk-now back, for as long as it may be. */
export function undo(state: Session, wall: number): Step<Session> {
  if (state.undo === undefined || !mayUndo(state, wall)) return step(state);
  return jump(without(state, 'gap', 'undo'), wall, 'session', state.undo.place);
}

/** Goes to the start of the segment, or of the one before when it has only begun. */
export function back(state: Session, wall: number): Step<Session> {
  const next = without(state, 'gap', 'undo');
  const { coolDown } = state.score.layout;
  if (state.lane === 'cool-down' && coolDown) return jump(next, wall, 'cool-down', coolDown.start);
  return jump(next, wall, 'session', backFrom(state.score.timeline, state.place));
}

/** From running: a seek. From a hold or a silence: sound too, in answer to the person. */
export function toCoolDown(state: Session, wall: number): Step<Session> {
  const goal = coolDownGoal(state);
  if (goal === undefined) return step(state);
  const go = state.name === 'running' ? jump : sound;
  return go(without(state, 'gap', 'undo', 'wentOnByLock'), wall, goal.lane, goal.to);
}

/**
 * Forward by what a gap lost, from a lane first through what is left of it. Past the end the
 * session is finished, and its last words are heard.
 */
export function catchUp(state: Session, wall: number, lost: Ms): Step<Session> {
  const go: typeof jump = (...to) => inStep((state.name === 'running' ? jump : sound)(...to));
  const next = without(state, 'gap', 'undo', 'wentOnByLock');
  const { layout } = state.score;
  if (state.lane === 'cool-down' && layout.coolDown) {
    const to = ms(Math.min(layout.coolDown.end, state.track + lost));
    return to >= layout.coolDown.end
      ? endWith(go(next, wall, 'cool-down', to), wall)
      : go(next, wall, 'cool-down', to);
  }
  const owed = state.lane === 'one-more' ? (state.extraUntil ?? state.track) - state.track : 0;
  if (lost < owed) return go(next, wall, 'one-more', ms(state.track + lost));
  const to = ms(Math.min(layout.session, state.place + lost - owed));
  const there = go(next, wall, 'session', to);
  return to >= layout.session ? endWith(there, wall) : there;
}

/** Who wants to be in step again is told of every gap. */
const inStep = ({ state, effects }: Step<Session>): Step<Session> => ({
  state: without(state, 'fresh'),
  effects,
});

function endWith(there: Step<Session>, wall: number): Step<Session> {
  const end = finish(there.state, wall);
  return { state: end.state, effects: [...there.effects, ...end.effects] };
}
