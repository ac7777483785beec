import type { TrackLayout } from '../track/layout.ts';
import { type Ms, ms } from '../units.ts';
import { beginStretch, endStretch } from './credit.ts';
import type { Effect, Step } from './effect.ts';
import { GO_ON_BEFORE } from './places.ts';
import type { Moment, MovingLane, Session } from './session.ts';

/** A state and what comes of it. */
export const step = (state: Session, ...effects: Effect[]): Step<Session> => ({ state, effects });

/** What is done after an earlier step, its effects first. */
export function andThen(
  first: Step<Session>,
  next: (state: Session) => Step<Session>,
): Step<Session> {
  const second = next(first.state);
  return { state: second.state, effects: [...first.effects, ...second.effects] };
}

/** A state without some of its optional parts. */
export function without<
  K extends 'extraUntil' | 'undo' | 'gap' | 'wentOnByLock' | 'settledAt' | 'fresh',
>(state: Session, ...keys: K[]): Session {
  const copy = { ...state };
  for (const key of keys) delete copy[key];
  return copy;
}

/** Where a lane begins in the track. */
export function laneStart(layout: TrackLayout, lane: MovingLane): Ms {
  if (lane === 'session') return ms(0);
  return lane === 'one-more' ? layout.oneMore.start : (layout.coolDown?.start ?? layout.session);
}

/** Where in the track a lane is to be left: the end of the session, the minute or the cool-down. */
export function laneLimit(state: Session): Ms {
  const { layout } = state.score;
  if (state.lane === 'one-more') return state.extraUntil ?? layout.oneMore.end;
  return state.lane === 'cool-down' ? (layout.coolDown?.end ?? layout.session) : layout.session;
}

/** The session runs, from a place of a lane on. What was open to be undone or told stays so. */
export function runFrom(state: Session, lane: MovingLane, at: Moment): Session {
  const next = lane === 'one-more' ? state : without(state, 'extraUntil');
  return {
    ...next,
    name: 'running',
    lane,
    place: lane === 'session' ? at.track : state.place,
    track: at.track,
    moved: at,
    credit: beginStretch(state.credit, lane === 'session' ? 'plan' : 'extra', at),
    wrong: false,
  };
}

/** A running session goes to a place of a lane. */
export const jump = (state: Session, wall: number, lane: MovingLane, to: Ms): Step<Session> =>
  step(runFrom(state, lane, { wall, track: to }), { type: 'seek', to });

/** Sound is wanted at a place of a lane, after it was away: in answer to a person only. */
export function sound(state: Session, wall: number, lane: MovingLane, to: Ms): Step<Session> {
  return soundAt(runFrom(state, lane, { wall, track: to }), to);
}

/** Sound at a place of the track: by a new element where the old one broke. */
export const soundAt = (state: Session, to: Ms): Step<Session> =>
  state.broken
    ? step({ ...state, broken: false, fresh: true }, { type: 'rebuild', at: to })
    : step(state, { type: 'seek', to }, { type: 'play' });

/** Goes on three seconds before the place, or from the start of the lane. */
export function goOn(state: Session, wall: number): Step<Session> {
  const start = laneStart(state.score.layout, state.lane);
  const to = ms(Math.max(start, state.track - GO_ON_BEFORE));
  return sound(without(state, 'gap', 'undo', 'wentOnByLock'), wall, state.lane, to);
}

/** Holds: the place is kept, and the sound goes on in the holding lane, never stopped by us. */
export function hold(state: Session, wall: number, wrong: boolean): Step<Session> {
  const to = state.score.layout.holding.start;
  const next = without(state, 'undo', 'gap', 'wentOnByLock', 'fresh');
  return step(
    {
      ...next,
      name: 'holding',
      wrong,
      moved: { wall, track: to },
      credit: endStretch(state.credit),
    },
    { type: 'seek', to },
  );
}

/** The session is over before its end. */
export function endEarly(state: Session, wall: number): Step<Session> {
  const next = without(state, 'undo', 'gap', 'wentOnByLock');
  return step(
    {
      ...next,
      name: 'ended-early',
      wrong: false,
      hushed: true,
      endedAt: wall,
      credit: endStretch(state.credit),
    },
    { type: 'pause' },
    ...over(state),
  );
}

/** The session reached its end. The words of the end are in the tail and are left to sound. */
export function finish(state: Session, wall: number): Step<Session> {
  const next = without(state, 'undo', 'gap', 'wentOnByLock', 'extraUntil');
  return step(
    {
      ...next,
      name: 'finished',
      place: state.lane === 'session' ? state.score.layout.session : state.place,
      wrong: false,
      endedAt: wall,
      credit: endStretch(state.credit),
    },
    ...over(state),
  );
}

const over = (state: Session): Effect[] =>
  state.medium === 'screen'
    ? [{ type: 'stay-awake', on: false }, { type: 'close' }]
    : [{ type: 'close' }];

/** To the cool-down: the plan's own, or the five minutes of easy walk where it has none. */
export function coolDownGoal(state: Session): { lane: MovingLane; to: Ms } | undefined {
  const { timeline, layout } = state.score;
  if (state.lane === 'cool-down') return undefined;
  const ahead = timeline.segments.find((segment) => segment.part === 'cool-down');
  if (ahead !== undefined) {
    return state.place < ahead.start ? { lane: 'session', to: ahead.start } : undefined;
  }
  return layout.coolDown && { lane: 'cool-down', to: layout.coolDown.start };
}
