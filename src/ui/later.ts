import { createElement, useEffect, useState } from 'react';
import { common } from '../copy/common.ts';
import { piece } from './piece.tsx';

type Later = typeof import('./screens/later.ts');

let asked: Promise<Later> | undefined;

/** Fetches the screens that nobody sees first. A failed try does not spoil the next one. */
export function loadLater(): Promise<Later> {
  asked ??= import('./screens/later.ts').catch((error: unknown) => {
    asked = undefined;
    throw error;
  });
  return asked;
}

/** Those screens, fetched when one is needed at the latest. */
export const LaterScreens = piece(
  async () => (await loadLater()).LaterScreens,
  createElement('p', { className: 'for-readers' }, common.loading),
);

/** Them with what they bring to the first pages; undefined until they are there. */
export function useLater(): Later | undefined {
  const [later, setLater] = useState<Later>();
  useEffect(
    () =>
      void loadLater().then(
        (made) => setLater(() => made),
        () => undefined,
      ),
    [],
  );
  return later;
}
