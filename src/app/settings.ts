import { createStore, type StoreApi } from 'zustand/vanilla';
import { TALK_LEVELS } from '../domain/cues/cue.ts';
import type { Settings, SettingsState } from './contract.ts';
import type { Store } from './ports.ts';
import type { Queue } from './queue.ts';

/** What holds until somebody chooses. */
export const DEFAULT_SETTINGS: Settings = {
  talk: 'usual',
  mode: 'hear',
  vibration: true,
  appearance: 'auto',
};

/** The settings, and how what was stored comes into them. */
export interface SettingsHolder {
  readonly store: StoreApi<SettingsState>;
  /** What was stored; changes made before it came stand on top of it. */
  show(stored: Partial<Settings>): void;
}

/** How this phone is set. Changes count at once and are written in their order. */
export function createSettings(db: Store, queue: Queue): SettingsHolder {
  /** Changes from before the stored settings were read: written alone they would wipe the rest. */
  let early: Partial<Settings> | undefined = {};

  const store = createStore<SettingsState>((set, get) => ({
    settings: DEFAULT_SETTINGS,
    async change(part) {
      set({ settings: { ...get().settings, ...part } });
      if (early === undefined) write();
      else early = { ...early, ...part };
    },
  }));

  function write(): void {
    const { settings } = store.getState();
    queue.push(() => db.putSettings(settings));
  }

  return {
    store,
    show(stored) {
      const changes = early ?? {};
      early = undefined;
      store.setState({ settings: { ...readSettings(stored), ...changes } });
      if (Object.keys(changes).length > 0) write();
    },
  };
}

const oneOf = <T>(value: unknown, allowed: readonly T[], otherwise: T): T =>
  allowed.includes(value as T) ? (value as T) : otherwise;

/** Stored settings; a value that this version does not know is the default. */
const readSettings = (stored: Partial<Settings>): Settings => ({
  ...DEFAULT_SETTINGS,
  ...stored,
  talk: oneOf(stored.talk, TALK_LEVELS, DEFAULT_SETTINGS.talk),
  mode: oneOf(stored.mode, ['hear', 'watch'], DEFAULT_SETTINGS.mode),
  vibration: oneOf(stored.vibration, [true, false], DEFAULT_SETTINGS.vibration),
  appearance: oneOf(stored.appearance, ['auto', 'light', 'dark'], DEFAULT_SETTINGS.appearance),
});
