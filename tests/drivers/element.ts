import type { Signal, Transport } from '../../src/app/ports.ts';
import { type Ms, ms } from '../../src/domain/units.ts';
import type { HandClock } from './clock.ts';

/** An audio element that tests turn by hand: its place moves with the clock while it plays. */
export class HandElement implements Transport {
  playing = false;
  loaded = 0;
  closed = 0;
  plays = 0;
  bytes: Uint8Array | undefined;
  /** The next play is refused. */
  refuses = false;
  /** It says that it plays, and stands. */
  private stuck = false;
  private total = 0;
  private from = 0;
  private since = 0;
  private readonly listeners = new Set<(signal: Signal) => void>();
  private stop: (() => void) | undefined;

  constructor(readonly clock: HandClock) {}

  load = (track: { bytes?: Uint8Array<ArrayBuffer>; total: Ms }): void => {
    this.halt();
    this.loaded++;
    this.bytes = track.bytes;
    this.total = track.total;
    this.from = 0;
  };
  play = (): void => {
    this.plays++;
    if (this.refuses) {
      this.say('paused');
      return;
    }
    if (this.playing) return;
    this.playing = true;
    this.since = this.clock.monotonic();
    this.stop = this.clock.every(250, () => this.say('tick'));
    this.say('playing');
  };
  pause = (): void => {
    const was = this.playing;
    this.halt();
    if (was) this.say('paused');
  };
  seek = (to: Ms): void => {
    this.from = to;
    this.since = this.clock.monotonic();
    this.say('tick');
  };
  rebuild = (at: Ms): void => {
    this.halt();
    this.stuck = false;
    this.from = at;
    this.since = this.clock.monotonic();
    this.play();
  };
  place = (): Ms =>
    ms(
      this.playing && !this.stuck
        ? Math.min(this.total, this.from + this.clock.monotonic() - this.since)
        : this.from,
    );
  close = (): void => {
    this.halt();
    this.closed++;
    this.from = 0;
  };
  listen = (listener: (signal: Signal) => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  say(signal: Signal): void {
    for (const listener of [...this.listeners]) listener(signal);
  }

  /** The system takes the sound. */
  take(): void {
    this.pause();
  }

  /** It stands, or moves again, and says nothing of it. */
  stick(stuck: boolean): void {
    this.from = this.place();
    this.since = this.clock.monotonic();
    this.stuck = stuck;
  }

  /** It reports an error, and plays no more until it is built anew. */
  fail(): void {
    this.halt();
    this.say('failed');
  }

  /** The tab is gone: no event tells of it. */
  die(): void {
    this.listeners.clear();
    this.halt();
  }

  private halt(): void {
    this.from = this.place();
    this.playing = false;
    this.stop?.();
    this.stop = undefined;
  }
}
