import { createStore, type StoreApi } from 'zustand/vanilla';
import type { SessionLock } from './session-lock.ts';
import type { WorkerPort } from './worker.ts';

export interface UpdatesView {
  /** Everything needed is on this phone. */
  readonly offlineReady: boolean;
  /** A new version waits; never set while a session is under way. */
  readonly waiting: boolean;
  /** Takes the new version, unless a session is under way here or in another tab. */
  apply(): void;
}

export interface Updates {
  readonly store: StoreApi<UpdatesView>;
  /** Tell it when a session begins and when it is over. Safe to repeat. */
  setBusy(busy: boolean): void;
  /** Asks for a new version if none was asked for within the hour. Does nothing while busy. */
  look(now: number): void;
}

/** Long enough to cost no one data, short enough that an app never closed still learns of one. */
const LOOK_EVERY_MS = 60 * 60 * 1000;

/**
 * Offers new versions and never forces one. What waits is hidden while a session is under way,
 * and a page is reloaded only when the person asked for it and no session runs.
 *
 * @param worker the service worker, @param lock tells whether any tab runs a session,
 * @param reload opens the page anew
 */
export function createUpdates(worker: WorkerPort, lock: SessionLock, reload: () => void): Updates {
  let busy = false;
  let pending = false;
  let asked = false;
  let tookOver = false;
  let lookedAt: number | undefined;
  let release: (() => void) | undefined;

  const store = createStore<UpdatesView>(() => ({ offlineReady: false, waiting: false, apply }));
  const show = (): void => store.setState({ waiting: pending && !busy });
  const reloadWhenFree = (): void => {
    if (asked && tookOver && !busy) reload();
  };

  function apply(): void {
    if (busy || !pending) return;
    void lock.whileNobodyRuns(async () => {
      if (busy) return;
      asked = true;
      // Another tab may have let the new version in already: then only this page is old.
      if (tookOver) reloadWhenFree();
      else await worker.giveWay();
    });
  }

  worker.onReady(() => store.setState({ offlineReady: true }));
  worker.onWaiting(() => {
    pending = true;
    show();
  });
  worker.onTakenOver(() => {
    pending = true;
    tookOver = true;
    show();
    reloadWhenFree();
  });

  return {
    store,
    setBusy(now) {
      if (now === busy) return;
      busy = now;
      release?.();
      release = busy ? lock.hold() : undefined;
      show();
      reloadWhenFree();
    },
    look(now) {
      if (busy || (lookedAt !== undefined && now - lookedAt < LOOK_EVERY_MS)) return;
      lookedAt = now;
      worker.look();
    },
  };
}
