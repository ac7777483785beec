import type { Device } from '../ports.ts';

/** Keeps the screen on for a session that is only seen, and for a person who watches one. */
export interface Wake {
  /** The session itself is on the screen (or no longer). */
  see(on: boolean): void;
  /** A person watches the running screen (or no longer). */
  watch(on: boolean): void;
  /** The session may have ended. */
  look(): void;
  stop(): void;
}

/**
 * Asks the phone for its screen, for as long as somebody needs it.
 *
 * @param underWay whether a session runs: only then is a watched screen kept on
 */
export function createWake(device: Device, underWay: () => boolean): Wake {
  let seen = false;
  let watched = false;
  const look = (): void => device.stayAwake(seen || (watched && underWay()));
  return {
    see(on) {
      seen = on;
      look();
    },
    watch(on) {
      watched = on;
      look();
    },
    look,
    stop() {
      seen = false;
      watched = false;
      look();
    },
  };
}
