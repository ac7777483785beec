import { fail, type Result } from '../domain/result.ts';
import type { Clock, StoreProblem } from './ports.ts';

/** Something to be written. It may be tried several times. */
export type Write = () => Promise<Result<void, StoreProblem>>;

/** Writes that wait for their turn. */
export interface Queue {
  /**
   * @returns when it was tried, and the person may go on: it is written, or it waits with what
   * waits before it. Later than two seconds it is not waited for.
   */
  push(write: Write): Promise<void>;
  /** Forgets what has not been written. */
  drop(): void;
}

const AGAIN_MS = 5000;
/** A database that does not answer must not hold up a page for longer. */
const PATIENCE_MS = 2000;

interface Waiting {
  readonly write: Write;
  /** Whoever waits for the first try is let go on. */
  readonly tried: () => void;
}

const lost = (error: unknown): StoreProblem => ({ code: 'lost', detail: String(error) });

/**
 * Writes one after another, each at once and in the order in which they came. One that fails
 * stays first and is tried again, every few seconds and whenever another comes: nothing
 * overtakes it and nothing is lost while the page lives.
 *
 * @param tell whether something waits that could not be written
 * @param onRefused another tab has the right to write: what waits is dropped
 */
export function createQueue(
  clock: Clock,
  tell: (trouble: boolean) => void,
  onRefused: () => void = () => {},
): Queue {
  let waiting: Waiting[] = [];
  let busy = false;
  let stopTimer: (() => void) | undefined;

  async function pump(): Promise<void> {
    if (busy) return;
    busy = true;
    stopTimer?.();
    stopTimer = undefined;
    while (waiting.length > 0) {
      const [first] = waiting as [Waiting];
      // A write that breaks is a write that failed: the queue itself never stops.
      const result = await first.write().catch((error) => fail(lost(error)));
      if (!result.ok && result.error.code !== 'not-ours') {
        for (const { tried } of waiting) tried();
        tell(true);
        stopTimer = clock.later(AGAIN_MS, () => void pump());
        break;
      }
      first.tried();
      if (!result.ok) {
        drop();
        onRefused();
      } else if (waiting[0] === first) waiting.shift();
    }
    busy = false;
    if (waiting.length === 0) tell(false);
  }

  function drop(): void {
    for (const { tried } of waiting) tried();
    waiting = [];
  }

  return {
    push: (write) =>
      new Promise((resolve) => {
        const stop = clock.later(PATIENCE_MS, resolve);
        const tried = (): void => {
          stop();
          resolve();
        };
        waiting.push({ write, tried });
        void pump();
      }),
    drop,
  };
}
