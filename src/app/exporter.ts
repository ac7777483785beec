import type { StoreApi } from 'zustand/vanilla';
import type { Exporter, ProgrammesState, SettingsState } from './contract.ts';
import type { PackHolder } from './pack.ts';
import type { FileShare } from './ports.ts';

/** What handing a session over needs of the app and of the world. */
export interface ExporterNeeds {
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: StoreApi<SettingsState>;
  readonly pack: PackHolder;
  readonly share: FileShare;
}

/** Hands a session over as a file or as sound. What does so is fetched when it is asked for. */
export function createExporter(needs: ExporterNeeds): Exporter {
  const made = () => import('./hearing.ts').then((all) => all.exporterOver(needs));
  return {
    track: async (...asked) => (await made()).track(...asked),
    save: async (...asked) => (await made()).save(...asked),
    hear: async (...asked) => (await made()).hear(...asked),
  };
}
