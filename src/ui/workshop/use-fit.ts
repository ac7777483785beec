import { type RefObject, useCallback, useLayoutEffect, useRef, useState } from 'react';

/** Sizes of print that are tried, the largest that fits first. The last is kept, fit or not. */
const SIZES = [
  1.3, 1.25, 1.2, 1.15, 1.1, 1.05, 1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6,
] as const;
const SMALLEST = SIZES.length - 1;

/**
 * The largest print in which something is no higher than its page.
 *
 * @param most in CSS pixels
 */
export function useFit(most: number): {
  readonly ref: RefObject<HTMLDivElement | null>;
  readonly size: number;
} {
  const ref = useRef<HTMLDivElement>(null);
  const [tried, setTried] = useState(0);
  const shrink = useCallback(() => {
    if ((ref.current?.offsetHeight ?? 0) > most)
      setTried((before) => Math.min(before + 1, SMALLEST));
  }, [most]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each size is measured once drawn
  useLayoutEffect(shrink, [shrink, tried]);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(shrink);
    observer.observe(element);
    // Letters that arrive late are wider or narrower than those that stood in for them.
    const anew = () => setTried(0);
    document.fonts?.addEventListener('loadingdone', anew);
    return () => {
      observer.disconnect();
      document.fonts?.removeEventListener('loadingdone', anew);
    };
  }, [shrink]);
  return { ref, size: SIZES[tried] ?? 1 };
}
