import type { Clock } from '../../src/app/ports.ts';
import { NINE_O_CLOCK } from './sessions.ts';

interface Timer {
  at: number;
  readonly every?: number;
  readonly job: () => void;
}

/** The clock's twin that tests turn by hand. Promises settle between any two timers. */
export class HandClock implements Clock {
  private timers: Timer[] = [];
  private passed = 0;
  private moved = 0;

  now = (): number => NINE_O_CLOCK + this.passed + this.moved;
  monotonic = (): number => this.passed;
  zoneTime = () => ({ offsetMinutes: 60, zone: 'Europe/Paris' });

  every = (milliseconds: number, job: () => void) =>
    this.add({ at: this.passed + milliseconds, every: milliseconds, job });
  later = (milliseconds: number, job: () => void) =>
    this.add({ at: this.passed + milliseconds, job });

  /** Time passes, and timers run when it is their time. */
  async pass(seconds: number): Promise<void> {
    const until = this.passed + Math.round(seconds * 1000);
    await settle();
    for (;;) {
      const next = this.timers.filter(({ at }) => at <= until).sort((a, b) => a.at - b.at)[0];
      if (next === undefined) break;
      this.passed = Math.max(this.passed, next.at);
      if (next.every === undefined) this.timers = this.timers.filter((timer) => timer !== next);
      else next.at += next.every;
      next.job();
      await settle();
    }
    this.passed = until;
    await settle();
  }

  /** The wall clock jumps while everything sleeps: no timer runs, the monotonic clock stands. */
  sleep(seconds: number): void {
    this.moved += seconds * 1000;
  }

  private add(timer: Timer): () => void {
    this.timers.push(timer);
    return () => {
      this.timers = this.timers.filter((other) => other !== timer);
    };
  }
}

/** Lets everything that waits for a promise or a database go on. */
export const settle = async (): Promise<void> => {
  for (let turn = 0; turn < 8; turn++) await new Promise((resolve) => setImmediate(resolve));
};
