import { createStore, type StoreApi } from 'zustand/vanilla';
import type { VoicePack } from '../domain/track/pack.ts';
import type { PackStore } from './contract.ts';
import type { PackSource } from './ports.ts';

/** The voice pack, for those who compose with it. */
export interface PackHolder {
  readonly store: StoreApi<PackStore>;
  /** The pack, once it is ready. */
  current(): VoicePack | undefined;
  /** Settles when it is known whether there is one; at once when it is there. */
  settled(): Promise<void> | undefined;
}

/** The voice pack on its way here. Nothing is offered that needs it before it is ready. */
export function createPack(source: PackSource): PackHolder {
  let pack: VoicePack | undefined;
  let loading: Promise<void> | undefined;

  const store = createStore<PackStore>((set) => {
    async function load(): Promise<void> {
      set({ pack: { name: 'coming', loaded: 0, total: 0 } });
      let shown = -1;
      const result = await source.load(({ loaded, total }) => {
        const percent = total > 0 ? Math.floor((loaded / total) * 100) : 0;
        if (percent === shown) return;
        shown = percent;
        set({ pack: { name: 'coming', loaded, total } });
      });
      if (result.ok) pack = result.value;
      set({ pack: { name: result.ok ? 'ready' : result.error } });
    }
    return {
      pack: { name: 'coming', loaded: 0, total: 0 },
      async retry() {
        if (pack !== undefined) return;
        loading ??= load().finally(() => {
          loading = undefined;
        });
        await loading;
      },
    };
  });
  return { store, current: () => pack, settled: () => loading };
}
