import { createElement, useEffect, useState } from 'react';
import { common } from '../copy/common.ts';
import { afterPaint } from './after-paint.ts';
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

/**
 * Them with what they bring to the first pages; undefined until they are there. They are asked for
 * when the page has been drawn: on a slow phone they would take its time and its line.
 */
export function useLater(): Later | undefined {
  const [later, setLater] = useState(here);
  useEffect(() => {
    if (later !== undefined) return;
    // A failure is told by the screen that needs the piece.
    const ask = () => loadLater().then(setLater, () => undefined);
    return afterPaint(() => void ask());
  }, [later]);
  return later;
}
