import { systemClock } from '../clock.ts';
import { createUpdates, type LookingUpdates } from './updates.ts';
import { registerWorker } from './worker.ts';

/**
 * The updates of this page, over the browser's own service worker.
 *
 * @param presence tells whether another tab runs a session, where the browser can know
 */
export function updatesInBrowser(presence: { isFree(): Promise<boolean> }): LookingUpdates {
  // Without locks a tab knows of its own session only; holding every update back would be worse.
  const nobodyRuns = async (): Promise<boolean> => !('locks' in navigator) || presence.isFree();
  const updates = createUpdates(
    registerWorker(),
    nobodyRuns,
    () => location.reload(),
    systemClock.later,
  );
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') updates.look(systemClock.now());
  });
  return updates;
}
