import { createStore } from 'zustand/vanilla';
import type { UpdatesState } from '../../app/contract.ts';
import type { Updates } from '../../app/ports.ts';
import type { WorkerPort } from './worker.ts';

/** The app's updates, and the one thing that only the page asks of them. */
export interface LookingUpdates extends Updates {
  /**
   * Asks for a new version if none was asked for within the hour, and looks again whether one
   * that waits can be offered. Does nothing while busy.
   */
  look(now: number): void;
}

/** Long enough to cost no one data, short enough that an app never closed still learns of one. */
const LOOK_EVERY_MS = 60 * 60 * 1000;

/** How soon a session in another tab is asked after again, while a version waits. */
const ASK_AGAIN_MS = 5000;

/**
 * Offers new versions and never forces one. What waits is hidden while a session is under way,
 * and a page is reloaded only when the person asked for it and no session runs.
 *
 * @param worker the service worker
 * @param nobodyRuns tells whether no tab of this browser runs a session
 * @param reload opens the page anew
 * @param later calls once, after some milliseconds
 */
export function createUpdates(
  worker: WorkerPort,
  nobodyRuns: () => Promise<boolean>,
  reload: () => void,
  later: (milliseconds: number, job: () => void) => void,
): LookingUpdates {
  let busy = false;
  let pending = false;
  let asked = false;
  let tookOver = false;
  let lookedAt: number | undefined;

  const store = createStore<UpdatesState>(() => ({
    offlineReady: false,
    waiting: false,
    apply: () => void apply(),
  }));
  /** Hidden at once, shown only when no tab is known to run a session. */
  async function show(): Promise<void> {
    if (!pending || busy) return store.setState({ waiting: false });
    const free = await nobodyRuns();
    store.setState({ waiting: free && !busy });
    if (!free) later(ASK_AGAIN_MS, () => void show());
  }
  const reloadWhenFree = (): void => {
    if (asked && tookOver && !busy) reload();
  };

  async function apply(): Promise<void> {
    if (!store.getState().waiting || !(await nobodyRuns()) || busy) return;
    asked = true;
    // Another tab may have let the new version in already: then only this page is old.
    if (tookOver) reloadWhenFree();
    else worker.giveWay();
  }

  worker.onReady(() => store.setState({ offlineReady: true }));
  worker.onWaiting(() => {
    pending = true;
    void show();
  });
  worker.onTakenOver(() => {
    pending = true;
    tookOver = true;
    void show();
    reloadWhenFree();
  });

  return {
    store,
    setBusy(now) {
      busy = now;
      void show();
      reloadWhenFree();
    },
    look(now) {
      void show();
      if (busy || (lookedAt !== undefined && now - lookedAt < LOOK_EVERY_MS)) return;
      lookedAt = now;
      worker.look();
    },
  };
}
