import { createContext, type ReactNode, useContext } from 'react';
import { useStore } from 'zustand';
import type {
  App,
  DeviceState,
  FollowingState,
  LogState,
  PackStore,
  ProgrammesState,
  Settings,
  UpdatesState,
} from '../app/contract.ts';
import type { PublishingState, ReceivedState } from '../app/exchange-contract.ts';
import type { SessionStore } from '../app/session-contract.ts';

const AppContext = createContext<App | null>(null);

/** Gives all below it the app: the composition root's, or a made-up one in tests. */
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
/** The session that is made ready or under way, and what can be done with it. */
export const useSession = <T,>(pick: (state: SessionStore) => T): T =>
  useStore(useApp().session, pick);
/** The programmes of this phone, and the group chosen in each. */
export const useProgrammes = <T,>(pick: (state: ProgrammesState) => T): T =>
  useStore(useApp().programmes, pick);
/** How this phone is set. Changing it goes through `useApp().settings`. */
export const useSettings = <T,>(pick: (state: Settings) => T): T =>
  useStore(useApp().settings, (state) => pick(state.settings));
/** Whether the voice is here, and fetching it again. */
export const usePack = <T,>(pick: (state: PackStore) => T): T => useStore(useApp().pack, pick);
/** The sessions that were done, newest first. */
export const useLog = <T,>(pick: (state: LogState) => T): T => useStore(useApp().log, pick);
/** How each programme is gone through: paused, moved, decided about. */
export const useFollowing = <T,>(pick: (state: FollowingState) => T): T =>
  useStore(useApp().following, pick);
/** What this phone and this browser are and can do. */
export const useDevice = <T,>(pick: (state: DeviceState) => T): T =>
  useStore(useApp().device, pick);
/** What was opened from a leader, and from whom each programme came. */
export const useReceived = <T,>(pick: (state: ReceivedState) => T): T =>
  useStore(useApp().received, pick);
/** The leader's keys and what was sent from this phone, once they have been read. */
export const usePublishing = <T,>(pick: (state: PublishingState) => T): T =>
  useStore(useApp().publishing, pick);
/** Whether all is stored for use offline, and whether a new version waits. */
export const useUpdates = <T,>(pick: (state: UpdatesState) => T): T =>
  useStore(useApp().updates, pick);
