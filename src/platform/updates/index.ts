import { createStore } from 'zustand/vanilla';
import type { UpdatesState } from '../../app/contract.ts';
import type { Updates } from '../../app/ports.ts';

/** From the page's load to the first screen on a slow phone, which this must not delay. */
const AFTER_LOAD_MS = 600;

/**
 * The updates of this page. Nobody's first screen needs them, so what does the work is fetched
 * a moment after the page has loaded; until then nothing is offered and a session that began is remembered.
 *
 * @param presence tells whether another tab runs a session, where the browser can know
 */
export function startUpdates(presence: { isFree(): Promise<boolean> }): Updates {
  const nothing = { offlineReady: false, waiting: false, apply: () => {} };
  const store = createStore<UpdatesState>(() => nothing);
  let busy = false;
  let updates: Updates | undefined;

  const take = async (): Promise<void> => {
    const { updatesInBrowser } = await import('./in-browser.ts');
    updates = updatesInBrowser(presence);
    updates.store.subscribe((view) => store.setState(view, true));
    store.setState(updates.store.getState(), true);
    updates.setBusy(busy);
  };
  const whenLoaded = (): void => {
    setTimeout(
      () => void take().catch((error) => console.warn('No updates:', error)),
      AFTER_LOAD_MS,
    );
  };
  if (document.readyState === 'complete') whenLoaded();
  else window.addEventListener('load', whenLoaded, { once: true });

  return {
    store,
    setBusy(now) {
      busy = now;
      updates?.setBusy(now);
    },
  };
}
