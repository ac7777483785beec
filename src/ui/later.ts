import { type ComponentType, lazy } from 'react';

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

/** One of those screens, fetched when it is needed at the latest. */
export const later = (name: keyof Later): ComponentType =>
  lazy(async () => ({ default: (await loadLater())[name] }));

/** The leader's workshop: a piece that those who only take part never open. */
export const Workshop = lazy(async () => ({
  default: (await import('./workshop/index.ts')).Workshop,
}));
