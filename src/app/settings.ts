import { createStore, type StoreApi } from 'zustand/vanilla';
import { TALK_LEVELS } from '../domain/cues/cue.ts';
import type { Settings, SettingsState } from './contract.ts';
import type { Store } from './ports.ts';
import type { Queue } from './queue.ts';

export const DEFAULT_SETTINGS: Settings = {
  talk: 'usual',
  mode: 'hear',
  vibration: true,
  appearance: 'auto',
};

/** How this phone is set. Changes count at once and are written in their order. */
export function createSettings(store: Store, queue: Queue): StoreApi<SettingsState> {
  return createStore<SettingsState>((set, get) => ({
    settings: DEFAULT_SETTINGS,
    async change(part) {
      const settings = { ...get().settings, ...part };
      set({ settings });
      queue.push(() => store.putSettings(settings));
    },
  }));
}

const oneOf = <T>(value: unknown, allowed: readonly T[], otherwise: T): T =>
  allowed.includes(value as T) ? (value as T) : otherwise;

/** Stored settings; a value that this version does not know is the default. */
export const readSettings = (stored: Partial<Settings>): Settings => ({
  ...DEFAULT_SETTINGS,
  ...stored,
  talk: oneOf(stored.talk, TALK_LEVELS, DEFAULT_SETTINGS.talk),
  mode: oneOf(stored.mode, ['hear', 'watch'], DEFAULT_SETTINGS.mode),
  vibration: oneOf(stored.vibration, [true, false], DEFAULT_SETTINGS.vibration),
  appearance: oneOf(stored.appearance, ['auto', 'light', 'dark'], DEFAULT_SETTINGS.appearance),
});
