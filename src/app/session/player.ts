import type { Change, Effect } from '../../domain/session/effect.ts';
import type {
  Button,
  PlacedEvent,
  SessionEvent,
  Sign,
  StartEvent,
  Wish,
} from '../../domain/session/event.ts';
import { reduce } from '../../domain/session/reduce.ts';
import { isOver, isUnderWay, type Session } from '../../domain/session/session.ts';
import { type Ms, ms } from '../../domain/units.ts';
import type { Clock, Signal, Transport } from '../ports.ts';
import { behind } from './lead-in.ts';

/** What the player has done for it. */
export interface PlayerHooks {
  write(event: SessionEvent, strict: boolean): void;
  stayAwake(on: boolean): void;
  boundary(change: Change): void;
  /** The session is over and is to be logged. */
  ended(session: Session): void;
  /** It was left before it began: nothing is to be logged. */
  left(session: Session): void;
  /** After every event, heard or wished. */
  changed(signal: Signal | undefined): void;
}

/** The one session that this tab runs. */
export interface Player {
  readonly session: Session | undefined;
  /** Where the track is now. */
  track(): Ms;
  /** Makes a session ready on a transport, in silence. */
  arm(session: Session, transport: Transport, bytes: Uint8Array<ArrayBuffer> | undefined): void;
  start(event: Omit<StartEvent, 'type' | 'wall'>): void;
  recover(session: Session): void;
  wish(type: Wish): void;
  /** Lets the session go, without a word. */
  disarm(): void;
}

/** A sign is looked for this often while the element says nothing. */
const WATCH_MS = 1000;

const MEANS: Readonly<Record<Signal, Sign | Wish | Button>> = {
  tick: 'tick',
  woke: 'woke',
  playing: 'playing',
  paused: 'paused',
  failed: 'failed',
  'button-pause': 'button-pause',
  'button-play': 'button-play',
  previous: 'back',
  next: 'skip',
  // A slip on a lock screen must not end a session.
  stop: 'hold',
  hidden: 'tick',
  frozen: 'tick',
};

/**
 * Turns what the world says into events, the reducer's effects into calls. It holds the one
 * session that this tab runs; every event carries the wall clock and the place of the track.
 */
export function createPlayer(clock: Clock, hooks: PlayerHooks): Player {
  let session: Session | undefined;
  let transport: Transport | undefined;
  let stops: (() => void)[] = [];
  let waiting: (() => SessionEvent)[] = [];
  let busy = false;

  const track = (): Ms => transport?.place() ?? ms(0);

  const placed = (type: PlacedEvent['type']) => (): SessionEvent => ({
    type,
    wall: clock.now(),
    track: track(),
  });

  /** One event after another: what an effect makes happen comes after the effect's own step. */
  function send(event: () => SessionEvent): void {
    waiting.push(event);
    if (busy) return;
    busy = true;
    try {
      for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) take(next());
    } finally {
      busy = false;
    }
  }

  function take(event: SessionEvent): void {
    if (session === undefined) return;
    const { state, effects } = reduce(session, event);
    session = state;
    for (const effect of effects) carryOut(effect, state);
  }

  function carryOut(effect: Effect, state: Session): void {
    switch (effect.type) {
      case 'play':
        transport?.play();
        break;
      case 'pause':
        transport?.pause();
        break;
      case 'seek':
        transport?.seek(effect.to);
        break;
      case 'rebuild':
        transport?.rebuild(effect.at);
        break;
      case 'journal':
        hooks.write(effect.event, effect.strict);
        break;
      case 'stay-awake':
        hooks.stayAwake(effect.on);
        break;
      case 'boundary':
        hooks.boundary(effect.change);
        break;
      case 'close':
        hooks.ended(state);
        break;
      case 'leave':
        hooks.left(state);
        break;
    }
  }

  function hear(signal: Signal): void {
    if (session === undefined) return;
    send(placed(MEANS[signal]));
    hooks.changed(signal);
  }

  function attach(to: Transport): void {
    transport = to;
    const watch = (): void => {
      if (session !== undefined && (isUnderWay(session) || isOver(session))) hear('tick');
    };
    stops = [to.listen(hear), clock.every(WATCH_MS, watch)];
  }

  function disarm(): void {
    for (const stop of stops) stop();
    stops = [];
    waiting = [];
    transport?.close();
    transport = undefined;
    session = undefined;
  }

  return {
    get session() {
      return session;
    },
    track,
    arm(ready, to, bytes) {
      disarm();
      session = ready;
      const { total, leadIn } = ready.score.layout;
      const carrier = leadIn === undefined ? to : behind(to, leadIn.length);
      carrier.load({ total, ...(bytes && { bytes }) });
      attach(carrier);
    },
    start(event) {
      const wall = Math.min(clock.now(), event.about.startedAt);
      send(() => ({ ...event, type: 'start', wall }));
      hooks.changed(undefined);
    },
    recover(before) {
      if (session === undefined) return;
      const { medium, score } = session;
      session = before;
      send(() => ({ type: 'recovered', wall: clock.now(), layout: score.layout, medium }));
      if (session !== undefined) transport?.seek(session.track);
      hooks.changed(undefined);
    },
    wish(type) {
      send(placed(type));
      hooks.changed(undefined);
    },
    disarm,
  };
}
