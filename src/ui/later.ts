import { createElement, useCallback, useEffect, useState } from 'react';
import { common } from '../copy/common.ts';
import { afterPaint } from './after-paint.ts';
import { useProgrammes } from './app-context.tsx';
import { piece } from './piece.tsx';

type Later = typeof import('./screens/later.ts');

let asked: Promise<Later> | undefined;
/** Once they are there, a page is drawn with them at once. */
let here: Later | undefined;

/** Fetches the screens that nobody sees first. A failed try does not spoil the next one. */
export function loadLater(): Promise<Later> {
  asked ??= import('./screens/later.ts').then(
    (later) => {
      here = later;
      return later;
    },
    (error: unknown) => {
      asked = undefined;
      throw error;
    },
  );
  return asked;
}

/** Those screens, fetched when one is needed at the latest. */
export const LaterScreens = piece(
  async () => (await loadLater()).LaterScreens,
  createElement('p', { className: 'for-readers' }, common.loading),
);

/** What comes later, as far as it has come. */
interface Coming {
  readonly later: Later | undefined;
  /** It did not come: asks once more. */
  readonly again?: () => void;
}

/**
 * Those screens with what they bring to the first pages. They are asked for when the page has been
 * drawn with what is stored: on a slow phone they would take its time and its line.
 */
export function useLater(): Coming {
  const ready = useProgrammes((p) => p.ready);
  const [later, setLater] = useState(here);
  const [isMissing, setMissing] = useState(false);
  const ask = useCallback(() => {
    setMissing(false);
    loadLater().then(setLater, () => setMissing(true));
  }, []);
  useEffect(
    () => (ready && later === undefined ? afterPaint(ask) : undefined),
    [ready, later, ask],
  );
  return { later, ...(isMissing && { again: ask }) };
}
