import type { StoreApi } from 'zustand/vanilla';
import type { Exporter, ProgrammesState, SettingsState } from './contract.ts';
import type { PackHolder } from './pack.ts';
import type { FileShare } from './ports.ts';

interface Needs {
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: StoreApi<SettingsState>;
  readonly pack: PackHolder;
  readonly share: FileShare;
}

/** Hands a session over as a file or as sound. What makes them is fetched when it is asked for. */
export function createExporter({ programmes, settings, pack, share }: Needs): Exporter {
  const made = () => import('./hearing.ts');
  const save: Exporter['save'] = async (piece, talk, what) => {
    const voice = pack.current();
    if (voice === undefined) return;
    const { name, type, content } = (await made()).filePiece(piece, talk, what, voice);
    await share.give(name, type, content);
  };
  return {
    save,
    async track(choice, what) {
      const piece = (await made()).pieceOf(choice, programmes.getState().programmes);
      if (piece !== undefined) await save(piece, settings.getState().settings.talk, what);
    },
    hear: async (piece, talk) => (await made()).hearPiece(piece, talk, pack.current()),
  };
}
