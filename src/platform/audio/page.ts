import type { Signal } from '../../app/ports.ts';

/** What the page itself says of sleeping and waking: every one a moment to compare the clocks. */
export function listenToPage(say: (signal: Signal) => void): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  document.addEventListener(
    'visibilitychange',
    () => say(document.visibilityState === 'visible' ? 'woke' : 'hidden'),
    { signal },
  );
  window.addEventListener('pageshow', () => say('woke'), { signal });
  // Only some browsers freeze pages and say so.
  document.addEventListener('freeze', () => say('frozen'), { signal });
  document.addEventListener('resume', () => say('woke'), { signal });
  return () => stop.abort();
}
