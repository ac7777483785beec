import type { PackSource, Ports, Updates } from '../app/ports.ts';
import { fail } from '../domain/result.ts';
import type { PackAddresses } from './audio/pack.ts';
import { systemClock } from './clock.ts';
import { createDevice } from './device/device.ts';
import type { Connection } from './store/connection.ts';
import { createPresence } from './store/presence.ts';
import { createStore } from './store/store.ts';

/** What only the composition root knows. */
export interface Wiring {
  readonly connection: Connection;
  readonly pack: PackAddresses;
  readonly updates: Updates;
  /** Picture beside the title on the lock screen. */
  readonly artwork: readonly {
    readonly src: string;
    readonly sizes: string;
    readonly type: string;
  }[];
}

/** 128 random bits. `randomUUID` is only there on secure addresses; a club's own computer may be none. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The voice comes behind the first screen, and so does what fetches and checks it. */
function packLater(at: PackAddresses): PackSource {
  let source: PackSource | undefined;
  return {
    async load(progress) {
      try {
        source ??= (await import('./audio/pack.ts')).createPackSource(at);
      } catch {
        return fail('missing');
      }
      return source.load(progress);
    },
  };
}

/** The browser, as the app's ports. */
export const browserPorts = ({ connection, pack, updates, artwork }: Wiring): Ports => ({
  clock: systemClock,
  store: createStore(connection),
  exchange: async () => (await import('./exchange.ts')).createExchangePorts(connection),
  player: async () => (await import('./audio/player.ts')).createPlayerPorts(artwork),
  presence: createPresence(navigator.locks),
  device: createDevice(),
  pack: packLater(pack),
  // Fetched with the tap: a tap counts for some seconds, and the piece is on the phone by then.
  share: {
    give: async (...file) => (await import('./share/files.ts')).createFileShare().give(...file),
  },
  updates,
  newId,
});
