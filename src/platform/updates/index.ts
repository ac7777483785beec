import { createSessionLock } from './session-lock.ts';
import { createUpdates, type Updates } from './updates.ts';
import { registerWorker } from './worker.ts';

export type { Updates, UpdatesView } from './updates.ts';

/** The updates of this page, over the browser's own service worker and locks. */
export function startUpdates(): Updates {
  const updates = createUpdates(registerWorker(), createSessionLock(navigator.locks), () =>
    location.reload(),
  );
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') updates.look(Date.now());
  });
  return updates;
}
