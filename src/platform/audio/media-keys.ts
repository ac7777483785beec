import type { Signal } from '../../app/ports.ts';

const MEANING: readonly (readonly [MediaSessionAction, Signal])[] = [
  ['play', 'button-play'],
  ['pause', 'button-pause'],
  ['previoustrack', 'previous'],
  ['nexttrack', 'next'],
  ['stop', 'stop'],
];

/** Two slots beside play: while a seek handler is set, an iPhone shows seeking there instead. */
const NONE: readonly MediaSessionAction[] = ['seekbackward', 'seekforward', 'seekto'];

/** Buttons of the lock screen and of headsets. */
export function listenToMediaKeys(say: (signal: Signal) => void): { apply(): void } {
  const set = (action: MediaSessionAction, handler: (() => void) | null): void => {
    try {
      navigator.mediaSession?.setActionHandler(action, handler);
    } catch {
      // An action that this browser has not: one button less.
    }
  };
  const apply = (): void => {
    for (const [action, signal] of MEANING) set(action, () => say(signal));
    for (const action of NONE) set(action, null);
  };
  return { apply };
}
