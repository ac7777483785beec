import { createContext, type ReactNode, useContext } from 'react';
import { useStore } from 'zustand';
import type {
  App,
  DeviceState,
  FollowingState,
  LogState,
  PackStore,
  ProgrammesState,
  SessionStore,
  Settings,
  UpdatesState,
} from '../app/contract.ts';
import type { PublishingState, ReceivedState } from '../app/exchange-contract.ts';

const AppContext = createContext<App | null>(null);

export function AppProvider({ app, children }: { app: App; children: ReactNode }) {
  return <AppContext value={app}>{children}</AppContext>;
}

/** The app that the composition root made. Throws outside of `AppProvider`. */
export function useApp(): App {
  const app = useContext(AppContext);
  if (app === null) throw new Error('useApp outside of AppProvider');
  return app;
}

/*
 * Pick the smallest thing that a part shows (a text, a number): a part is drawn again only
 * when its pick changes, and the session's view changes several times a second.
 */
export const useSession = <T,>(pick: (state: SessionStore) => T): T =>
  useStore(useApp().session, pick);
export const useProgrammes = <T,>(pick: (state: ProgrammesState) => T): T =>
  useStore(useApp().programmes, pick);
export const useSettings = <T,>(pick: (state: Settings) => T): T =>
  useStore(useApp().settings, (state) => pick(state.settings));
export const usePack = <T,>(pick: (state: PackStore) => T): T => useStore(useApp().pack, pick);
export const useLog = <T,>(pick: (state: LogState) => T): T => useStore(useApp().log, pick);
export const useFollowing = <T,>(pick: (state: FollowingState) => T): T =>
  useStore(useApp().following, pick);
export const useDevice = <T,>(pick: (state: DeviceState) => T): T =>
  useStore(useApp().device, pick);
export const useReceived = <T,>(pick: (state: ReceivedState) => T): T =>
  useStore(useApp().received, pick);
export const usePublishing = <T,>(pick: (state: PublishingState) => T): T =>
  useStore(useApp().publishing, pick);
export const useUpdates = <T,>(pick: (state: UpdatesState) => T): T =>
  useStore(useApp().updates, pick);
