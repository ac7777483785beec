import { fail, type Result } from '../domain/result.ts';
import type { Clock, StoreProblem } from './ports.ts';

/** Something to be written. It may be tried several times. */
export type Write = () => Promise<Result<void, StoreProblem>>;

/** Writes that wait for their turn. */
export interface Queue {
  push(write: Write): void;
  /** Forgets what has not been written. */
  drop(): void;
}

const AGAIN_MS = 5000;

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
  let waiting: Write[] = [];
  let busy = false;
  let stopTimer: (() => void) | undefined;

  async function pump(): Promise<void> {
    if (busy) return;
    busy = true;
    stopTimer?.();
    stopTimer = undefined;
    while (waiting.length > 0) {
      const [first] = waiting as [Write];
      // A write that breaks is a write that failed: the queue itself never stops.
      const result = await first().catch((error) => fail(lost(error)));
      if (!result.ok && result.error.code !== 'not-ours') {
        tell(true);
        stopTimer = clock.later(AGAIN_MS, () => void pump());
        break;
      }
      if (!result.ok) {
        waiting = [];
        onRefused();
      } else if (waiting[0] === first) waiting.shift();
    }
    busy = false;
    if (waiting.length === 0) tell(false);
  }

  return {
    push(write) {
      waiting.push(write);
      void pump();
    },
    drop() {
      waiting = [];
    },
  };
}
