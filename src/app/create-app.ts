import type { App } from './contract.ts';
import { createPublished, createReceived, showCame } from './exchange-stores.ts';
import { createExporter } from './exporter.ts';
import { createFollowing } from './following.ts';
import type { LaterParts } from './later-parts.ts';
import { createLog, showStoredEntries } from './log.ts';
import { once } from './once.ts';
import { createPack } from './pack.ts';
import type { Ports } from './ports.ts';
import { createProgrammes, showStored } from './programmes.ts';
import { createQueue } from './queue.ts';
import { createLaterSession } from './session/later-session.ts';
import { createSettings } from './settings.ts';

/** The app, and when what was stored has been read. */
export interface RunningApp extends App {
  /** What was stored has been read, or could not be. */
  readonly loaded: Promise<void>;
}

const LOAD_AGAIN_MS = 5000;
/** Longer than a slow phone takes. An old tab may keep a newer one from its database. */
const LOAD_PATIENCE_MS = 4000;

/** Puts the app together over its ports and begins to load what is stored. */
export function createApp(ports: Ports): RunningApp {
  const { clock, store } = ports;
  const queue = createQueue(clock, (unsaved) => log.setState({ unsaved }));
  const programmes = createProgrammes(store, queue);
  const settings = createSettings(store, queue);
  const pack = createPack(ports.pack);
  const log = createLog(store, queue);
  const following = createFollowing(store, queue);
  const received = createReceived({ ports: ports.exchange, clock, programmes });
  const publishing = createPublished({ ports: ports.exchange, clock, share: ports.share });
  const session = createLaterSession(ports, { programmes, settings: settings.store, pack, log });

  const later = once(async () =>
    (await import('./later-parts.ts')).laterParts({
      ...ports,
      programmes,
      settings,
      log,
      following: following.store,
      received,
    }),
  );

  const part = <Name extends keyof LaterParts>(name: Name): LaterParts[Name] =>
    (async () => (await later())[name]()) as LaterParts[Name];

  async function load(): Promise<void> {
    const stopWaiting = clock.later(LOAD_PATIENCE_MS, () => void goOnWithout());
    const stored = await store.load();
    stopWaiting();
    if (!stored.ok) {
      await goOnWithout();
      clock.later(LOAD_AGAIN_MS, () => void load());
      return;
    }
    const { value } = stored;
    log.setState({ unread: false });
    settings.show(value.settings);
    // What others told goes in its time, also where nobody looks at it again.
    if (Date.parse(value.settings.boardsGoOn ?? '') <= clock.now()) part('letGo')().catch(() => {});
    following.show(value.following);
    await showFirst(value);
    showStoredEntries(log, value.log);
    log.setState({ ready: true });
    await session.found(value.journals);
    await showCame(received, value.programmes);
  }

  /** The app works from memory, and says that what is stored has not been read. */
  async function goOnWithout(): Promise<void> {
    log.setState({ unread: true });
    await showFirst({ programmes: [], choices: {} });
    log.setState({ ready: true });
    following.store.setState({ ready: true });
  }

  /** The voice is fetched and checked behind the first screen, not before it. */
  const showFirst = (stored: Parameters<typeof showStored>[1]): Promise<void> =>
    showStored(programmes, stored).finally(() => void pack.store.getState().retry());

  return {
    programmes,
    settings: settings.store,
    pack: pack.store,
    session: session.store,
    log,
    following: following.store,
    device: ports.device.state,
    updates: ports.updates.store,
    received,
    publishing,
    workshop: part('workshop'),
    board: part('board'),
    telling: part('telling'),
    records: part('records'),
    clock,
    newId: ports.newId,
    exporter: createExporter({ programmes, settings: settings.store, pack, share: ports.share }),
    loaded: load(),
  };
}
