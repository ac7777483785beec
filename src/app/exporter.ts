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

/** Hands a session over as a file. What makes the file is fetched with the session's machinery. */
export const createExporter = ({ programmes, settings, pack, share }: Needs): Exporter => ({
  async track(choice, what) {
    const voice = pack.current();
    if (voice === undefined) return;
    const { exportTrack } = await import('./export-track.ts');
    const known = programmes.getState().programmes;
    const file = exportTrack(choice, what, known, settings.getState().settings, voice);
    if (file !== undefined) await share.give(file.name, file.type, file.content);
  },
});
