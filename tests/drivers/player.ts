import type { Effect } from '../../src/domain/session/effect.ts';
import type { Button, SessionEvent, Sign, Wish } from '../../src/domain/session/event.ts';
import { readySession, reduce } from '../../src/domain/session/reduce.ts';
import type { Medium, Score, Session } from '../../src/domain/session/session.ts';
import { type Ms, ms } from '../../src/domain/units.ts';
import { ABOUT, NINE_O_CLOCK } from './sessions.ts';

/**
 * A phone turned by hand: a wall clock, an element whose place moves while it plays, and the
 * reducer, whose effects are carried out. Time passes only when a test says so.
 */
export class Phone {
  wall = NINE_O_CLOCK;
  playing = false;
  /** The element says that it plays, and stands. */
  stuck = false;
  /** The page's script does not run: no signs come. */
  blocked = false;
  session: Session;
  readonly effects: Effect[] = [];
  readonly journal: SessionEvent[] = [];
  private place = 0;
  private placed = NINE_O_CLOCK;

  constructor(
    readonly score: Score,
    readonly medium: Medium = 'sound',
  ) {
    this.session = readySession(ABOUT, score, medium);
  }

  /** Where the element is. */
  get track(): Ms {
    const moves = this.playing && !this.stuck;
    return ms(
      Math.min(this.score.layout.total, this.place + (moves ? this.wall - this.placed : 0)),
    );
  }

  /** The tap; with seconds ahead it begins a wait. */
  start(ahead = 0): this {
    const { score, medium, wall } = this;
    const about = { ...ABOUT, startedAt: wall + ahead * 1000 };
    return this.send({ type: 'start', wall, about, score, medium });
  }

  /** Something happens now, at the place where the track is. */
  say(type: Sign | Wish | Button): this {
    return this.send({ type, wall: this.wall, track: this.track });
  }

  /** Seconds pass, with a sign every quarter of a second unless the page is blocked. */
  pass(seconds: number, every = 0.25): this {
    const until = this.wall + seconds * 1000;
    while (this.wall < until) {
      this.wall = Math.min(until, this.wall + (this.blocked ? seconds : every) * 1000);
      if (!this.blocked) this.say('tick');
    }
    return this;
  }

  /** The system takes the sound. */
  take(): this {
    this.settle();
    this.playing = false;
    return this.say('paused');
  }

  /** The system gives the sound back. */
  giveBack(): this {
    this.settle();
    this.playing = true;
    return this.say('playing');
  }

  stick(stuck: boolean): this {
    this.settle();
    this.stuck = stuck;
    return this;
  }

  /** Somebody other than us moves the place. */
  scrub(to: number): this {
    this.place = to;
    this.placed = this.wall;
    return this;
  }

  send(event: SessionEvent): this {
    const { state, effects } = reduce(this.session, event);
    this.session = state;
    this.effects.push(...effects);
    for (const effect of effects) if (effect.type === 'journal') this.journal.push(effect.event);
    for (const effect of effects) this.carryOut(effect);
    return this;
  }

  private settle(): void {
    this.place = this.track;
    this.placed = this.wall;
  }

  private carryOut(effect: Effect): void {
    this.settle();
    if (effect.type === 'seek') this.place = effect.to;
    if (effect.type === 'play') this.playing = true;
    if (effect.type === 'pause') this.playing = false;
    if (effect.type === 'rebuild') {
      this.place = effect.at;
      this.stuck = false;
      this.playing = true;
    }
  }
}
