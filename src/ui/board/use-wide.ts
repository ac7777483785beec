import { useSyncExternalStore } from 'react';

/** A desk: as in `workshop.css`. */
const WIDE = '(min-width: 60rem)';

function subscribe(changed: () => void): () => void {
  const query = window.matchMedia(WIDE);
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

/** Whether there is room for a table of people by weeks. */
export const useWide = (): boolean =>
  useSyncExternalStore(subscribe, () => window.matchMedia(WIDE).matches);
