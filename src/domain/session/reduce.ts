import { ms } from '../units.ts';
import { noCredit } from './credit.ts';
import type { Effect, Step } from './effect.ts';
import type { SessionEvent } from './event.ts';
import { recover } from './recover.ts';
import {
  type About,
  isBeginning,
  isOver,
  type Medium,
  type Score,
  type Session,
  type StateName,
} from './session.ts';
import { holding } from './states/holding.ts';
import { over } from './states/over.ts';
import { ready } from './states/ready.ts';
import { running } from './states/running.ts';
import { interrupted, stalled } from './states/silent.ts';
import { waiting, waitingSilent } from './states/waiting.ts';

/**
 * Position is written this often, or more seldom while it does not move. Five seconds is the most
 * that a kill may cost, with a sign's lateness and the writing itself.
 */
export const WRITE_EVERY_MS = 4500;
const WRITE_EVERY_STANDING_MS = 30_000;

const STATES: Record<StateName, (state: Session, event: SessionEvent) => Step<Session>> = {
  ready,
  waiting,
  'waiting-silent': waitingSilent,
  running,
  holding,
  interrupted,
  stalled,
  finished: over,
  'ended-early': over,
  left: over,
};

/** A session that waits for its start. */
export const readySession = (about: About, score: Score, medium: Medium): Session => ({
  name: 'ready',
  about,
  score,
  medium,
  lane: 'session',
  place: ms(0),
  track: ms(0),
  moved: { wall: about.startedAt, track: ms(0) },
  credit: noCredit,
  wrong: false,
  broken: false,
  hushed: false,
  writtenAt: 0,
  writtenMove: { wall: about.startedAt, track: ms(0) },
  seenAt: 0,
});

/**
 * What moves one person through their own session and would move every group at once: while
 * groups are led, neither the screen nor a button of the lock screen does it.
 */
const NOT_FOR_GROUPS: ReadonlySet<SessionEvent['type']> = new Set<SessionEvent['type']>([
  'one-more',
  'walk-now',
  'skip',
  'back',
  'undo',
  'cool-down',
]);

/**
 * The player: a state and an event give the next state and what is to be done. Pure; the same
 * events give the same state, which is how a journal is read back.
 */
export function reduce(state: Session, event: SessionEvent): Step<Session> {
  if (state.about.purpose === 'lead' && NOT_FOR_GROUPS.has(event.type))
    return { state, effects: [] };
  const { state: next, effects } =
    event.type === 'recovered' ? recover(state, event) : STATES[state.name](state, event);
  const seen = { ...next, seenAt: event.wall };
  if (!isWorthWriting(state, next, event, effects)) return { state: seen, effects };
  const written: Effect[] = [
    ...lastMove(state, next, event).map((tick) => journal(tick, false)),
    journal(event, isStrict(state, next, event)),
  ];
  return {
    state: { ...seen, writtenAt: event.wall, writtenMove: seen.moved },
    effects: [...written, ...effects],
  };
}

const journal = (event: SessionEvent, strict: boolean): Effect => ({
  type: 'journal',
  event,
  strict,
});

/**
 * A stall and a gap are told from when the place last moved: that sign, too small to be written
 * when it came, is written before them, before a sign that the place stands and before what a person
 * does, so that a journal read back tells the same.
 */
function lastMove(before: Session, after: Session, { type }: SessionEvent): SessionEvent[] {
  const told =
    after.name !== before.name || after.gap !== before.gap || after.moved === before.moved;
  const matters = told || !SIGNS_ONLY.has(type);
  const moves = before.name === 'running' || before.name === 'waiting';
  const unwritten = moves && before.moved !== before.writtenMove;
  return matters && unwritten ? [{ type: 'tick', ...before.moved }] : [];
}

/** Signs are written when something came of them, and else every few seconds; the rest at once. */
function isWorthWriting(
  before: Session,
  after: Session,
  event: SessionEvent,
  effects: readonly Effect[],
): boolean {
  if (after.name === 'ready' || isOver(before)) return false;
  if (effects.length > 0 || after.name !== before.name || after.gap !== before.gap) return true;
  if (!SIGNS_ONLY.has(event.type)) return after !== before;
  // Read back without these, a sound would have yet to begin, or need no new element.
  if (hasBegun(before, after) || after.broken !== before.broken) return true;
  const every = after.name === 'running' ? WRITE_EVERY_MS : WRITE_EVERY_STANDING_MS;
  return event.wall - before.writtenAt >= every || event.wall < before.writtenAt;
}

const SIGNS_ONLY: ReadonlySet<SessionEvent['type']> = new Set([
  'tick',
  'woke',
  'playing',
  'paused',
  'failed',
]);

/** What must be on the disk before it counts: everything that a person did, and every new state. */
const isStrict = (before: Session, after: Session, event: SessionEvent): boolean =>
  after.name !== before.name || hasBegun(before, after) || !SIGNS_ONLY.has(event.type);

const hasBegun = (before: Session, after: Session): boolean =>
  isBeginning(before) && !isBeginning(after);
