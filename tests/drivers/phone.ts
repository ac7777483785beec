import 'fake-indexeddb/auto';
import { createStore as createZustand } from 'zustand/vanilla';
import type { DeviceState, UpdatesState } from '../../src/app/contract.ts';
import { createApp, type RunningApp } from '../../src/app/create-app.ts';
import type {
  LeadNote,
  LockScreen,
  NowPlaying,
  PackSource,
  Ports,
  Store,
} from '../../src/app/ports.ts';
import { ok } from '../../src/domain/result.ts';
import { createScreenClock } from '../../src/platform/audio/screen.ts';
import { createExchangePorts } from '../../src/platform/exchange.ts';
import { type Connection, connect } from '../../src/platform/store/connection.ts';
import { createStore } from '../../src/platform/store/store.ts';
import { HandClock, settle } from './clock.ts';
import { HandElement } from './element.ts';
import { silentPack } from './voice.ts';

let databases = 0;

export interface TabOptions {
  /** The same name is the same phone: what one tab stored, another finds. */
  readonly database?: string;
  readonly clock?: HandClock;
  readonly pack?: PackSource;
  readonly store?: (real: Store) => Store;
  /** Whether the browser can tell that a tab is gone. */
  readonly lockIsFree?: () => boolean;
  /** What lies there of leading, whatever wrote it. */
  readonly note?: unknown;
}

/** By phone: it survives a tab, as the browser's does. */
const notes = new Map<string, string>();
const noteOf = (phone: string): LeadNote => ({
  read: () => JSON.parse(notes.get(phone) ?? 'null'),
  write: (note) => void notes.set(phone, JSON.stringify(note)),
});

/** One tab of the app on a phone that tests turn by hand, over the real store. */
export interface Tab {
  readonly app: RunningApp;
  readonly clock: HandClock;
  readonly sound: HandElement;
  readonly database: string;
  readonly store: Store;
  readonly seen: {
    readonly titles: NowPlaying[];
    readonly places: [number, number, boolean][];
    readonly vibrations: string[];
    readonly awake: boolean[];
    readonly busy: boolean[];
    readonly files: { name: string; type: string; size: number }[];
  };
  /** The tab is gone, without a word. */
  kill(): void;
}

export async function openTab(options: TabOptions = {}): Promise<Tab> {
  const database = options.database ?? `phone-${++databases}`;
  if ('note' in options) notes.set(database, JSON.stringify(options.note));
  const clock = options.clock ?? new HandClock();
  const connection: Connection = connect(database);
  const real = createStore(connection);
  const store = options.store?.(real) ?? real;
  const sound = new HandElement(clock);
  const seen: Tab['seen'] = {
    titles: [],
    places: [],
    vibrations: [],
    awake: [],
    busy: [],
    files: [],
  };
  const lockScreen: LockScreen = {
    show: (now) => void seen.titles.push(now),
    place: (at, total, going) => void seen.places.push([at, total, going]),
    clear: () => {},
  };
  let alive = true;
  const ports: Ports = {
    clock: {
      now: clock.now,
      monotonic: clock.monotonic,
      zoneTime: clock.zoneTime,
      every: (time, job) => clock.every(time, () => alive && job()),
      later: (time, job) => clock.later(time, () => alive && job()),
    },
    store,
    player: async () => ({
      sound,
      screen: createScreenClock(clock, () => {}),
      lockScreen,
      leadNote: noteOf(database),
    }),
    presence: {
      hold: () => {},
      release: () => {},
      isFree: async () => options.lockIsFree?.() ?? false,
    },
    device: {
      state: createZustand<DeviceState>(() => ({
        installed: true,
        platform: 'other',
        embedded: false,
        canVibrate: true,
        canWakeLock: true,
        canShareFiles: false,
      })),
      userAgent: 'a phone in a test',
      stayAwake: (on) => void seen.awake.push(on),
      onAwake: () => {},
      vibrate: (change) => void seen.vibrations.push(change),
      persist: async () => {},
    },
    pack: options.pack ?? { load: async () => ok(silentPack()) },
    share: {
      give: async (name, type, content) =>
        void seen.files.push({ name, type, size: content.length }),
    },
    updates: {
      store: createZustand<UpdatesState>(() => ({
        offlineReady: true,
        waiting: false,
        apply: () => {},
      })),
      setBusy: (busy) => void seen.busy.push(busy),
    },
    exchange: async () => ({
      ...createExchangePorts(connection),
      address: () => 'https://club.example/app/',
    }),
    newId: () => crypto.randomUUID(),
  };
  const app = createApp(ports);
  await app.loaded;
  await settle();
  return {
    app,
    clock,
    sound,
    database,
    store,
    seen,
    kill() {
      alive = false;
      sound.die();
      connection.close();
    },
  };
}

/** Opens a programme's text and keeps it, as a person does who answers yes. */
export async function take(app: Pick<RunningApp, 'received'>, text: string): Promise<void> {
  await app.received.getState().open(text);
  await app.received.getState().accept('keep');
}
