import type { StoreApi } from 'zustand/vanilla';
import {
  beginWatch,
  hiddenFor,
  type PocketWatch,
  watchPocket,
} from '../../domain/session/pocket-check.ts';
import type { Session } from '../../domain/session/session.ts';
import type { SettingsState } from '../contract.ts';
import type { Clock, Device, Signal } from '../ports.ts';
import type { Player } from './player.ts';

/** Writes down what the phone does during a pocket check. */
export interface PocketWatcher {
  hear(signal: Signal, player: Player): void;
  ended(session: Session): void;
}

/** Watches pocket checks, and keeps what the last one saw in the settings. */
export function createPocketWatcher(
  clock: Clock,
  { device }: { device: Device },
  settings: StoreApi<SettingsState>,
): PocketWatcher {
  let watch: PocketWatch | undefined;
  let silentAtEnd = false;

  return {
    hear(signal, player) {
      const { session } = player;
      if (session?.about.purpose !== 'pocket-check' || session.name === 'ready') return;
      const at = { wall: clock.now(), track: player.track() };
      if (watch?.startedAt !== session.about.startedAt) {
        watch = beginWatch({ wall: session.about.startedAt, track: session.place });
      }
      silentAtEnd = session.name === 'interrupted' || session.name === 'stalled';
      watch = watchPocket(watch, signal, at);
    },
    ended(session) {
      const heardToEnd = session.name === 'finished';
      // A check that the person broke off says nothing about the phone.
      if (watch === undefined || (!heardToEnd && !silentAtEnd)) return;
      const now = clock.now();
      void settings.getState().change({
        pocketCheck: {
          at: now,
          userAgent: device.userAgent,
          installed: device.state.getState().installed,
          heardToEnd,
          hiddenMs: hiddenFor(watch, now),
          longestSilenceMs: watch.longestSilenceMs,
          events: watch.events,
        },
      });
      watch = undefined;
    },
  };
}
