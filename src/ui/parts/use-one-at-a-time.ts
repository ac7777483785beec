import { useRef } from 'react';

/**
 * An act that is not begun again while it is under way: a button that is tapped twice adds or
 * writes once.
 */
export function useOneAtATime(act: () => Promise<void>): () => Promise<void> {
  const isUnderWay = useRef(false);
  return async () => {
    if (isUnderWay.current) return;
    isUnderWay.current = true;
    try {
      await act();
    } finally {
      isUnderWay.current = false;
    }
  };
}
