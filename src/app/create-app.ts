import { readEntry } from '../domain/log/read-entry.ts';
import type { App } from './contract.ts';
import { createPublishing } from './exchange-publish.ts';
import { createReceived, showCame } from './exchange-receive.ts';
import { createExporter } from './exporter.ts';
import { createLog, showEntries } from './log.ts';
import { createPack } from './pack.ts';
import type { Ports } from './ports.ts';
import { createProgrammes, showStored } from './programmes.ts';
import { createQueue } from './queue.ts';
import { createLaterSession } from './session/later-session.ts';
import { createSettings, readSettings } from './settings.ts';

export interface RunningApp extends App {
  /** What was stored has been read, or could not be. */
  readonly loaded: Promise<void>;
}

/** Puts the app together over its ports and begins to load what is stored. */
export function createApp(ports: Ports): RunningApp {
  const { clock, store } = ports;
  const queue = createQueue(clock, () => {});
  const programmes = createProgrammes(clock, store, queue);
  const settings = createSettings(store, queue);
  const pack = createPack(ports.pack);
  const log = createLog(clock, store, queue);
  const received = createReceived({ ports: ports.exchange, clock, programmes });
  const publishing = createPublishing({ ports: ports.exchange, clock, share: ports.share });
  const session = createLaterSession(ports, { programmes, settings, pack, log });

  async function load(): Promise<void> {
    void pack.store.getState().retry();
    const stored = await store.load();
    if (!stored.ok) {
      // The app works from memory; writing is tried again, and reads first what is there.
      await showStored(programmes, { programmes: [], choices: {} });
      log.setState({ ready: true });
      return;
    }
    const { value } = stored;
    settings.setState({ settings: readSettings(value.settings) });
    await showStored(programmes, value);
    showEntries(
      log,
      value.log.flatMap((entry) => readEntry(entry) ?? []),
    );
    log.setState({ ready: true });
    await session.found(value.journals);
    await showCame(received, value.programmes);
  }

  return {
    programmes,
    settings,
    pack: pack.store,
    session: session.store,
    log,
    device: ports.device.state,
    updates: ports.updates.store,
    exporter: createExporter({ programmes, settings, pack, share: ports.share }),
    received,
    publishing,
    loaded: load(),
  };
}
