import type { Clock } from '../ports.ts';
import type { JournalKeeper } from './journal-keeper.ts';

/** Whether another tab runs a session, looked at when asked and, while one does, again and again. */
export interface Neighbours {
  readonly busy: boolean;
  look(): Promise<void>;
  /** Another tab took the session that ran here. */
  tookOver(): void;
}

const LOOK_EVERY_MS = 5000;

interface Needs {
  readonly clock: Clock;
  readonly keeper: JournalKeeper;
  /** A session runs here: then there is no other. */
  runsHere(): boolean;
  changed(): void;
  /** The other tab is done, or gone. */
  freed(): Promise<void>;
}

/** Looks at other tabs; nothing is known of them yet. */
export function createNeighbours(needs: Needs): Neighbours {
  let busy = false;
  let stopLooking: (() => void) | undefined;

  async function look(): Promise<void> {
    const before = busy;
    busy = !needs.runsHere() && (await needs.keeper.isElsewhere());
    if (busy) keepLooking();
    else stop();
    if (busy !== before) needs.changed();
    if (before && !busy) await needs.freed();
  }

  function keepLooking(): void {
    stopLooking ??= needs.clock.every(LOOK_EVERY_MS, () => void look());
  }

  function stop(): void {
    stopLooking?.();
    stopLooking = undefined;
  }

  return {
    get busy() {
      return busy;
    },
    look,
    tookOver() {
      busy = true;
      keepLooking();
      needs.changed();
    },
  };
}
