import { createStore } from 'zustand/vanilla';
import type { Ports } from '../ports.ts';
import type { SessionStore } from '../session-contract.ts';
import { IDLE_VIEW } from './idle-view.ts';
import type { SessionNeeds, SessionPart } from './session-store.ts';

/**
 * The session's store from the first moment on. The machinery behind it (cues, track, player) is
 * a third of the app and nobody's first sight, so it comes in a piece of its own, asked for at
 * once. What needs a tap (`start`) is only offered when that piece has made a session ready.
 */
export function createLaterSession(ports: Ports, needs: SessionNeeds): SessionPart {
  let asked: Promise<SessionPart> | undefined;

  /** A failed try (no signal on a first visit) does not spoil the next one. */
  const machinery = (): Promise<SessionPart> => {
    asked ??= Promise.all([import('./session-store.ts'), ports.player()]).then(
      ([{ createSession }, player]) => {
        const part = createSession({ ...ports, ...player }, needs);
        store.setState(part.store.getState(), true);
        part.store.subscribe((state) => store.setState(state, true));
        return part;
      },
      (error: unknown) => {
        asked = undefined;
        throw error;
      },
    );
    return asked;
  };
  const real = async (): Promise<SessionStore> => (await machinery()).store.getState();
  const nothing = (): void => {};

  const store = createStore<SessionStore>(() => ({
    view: IDLE_VIEW,
    prepare: async (choice, medium) => (await real()).prepare(choice, medium),
    preparePocketCheck: async () => (await real()).preparePocketCheck(),
    recover: async (answer) => (await real()).recover(answer),
    start: nothing,
    playCueNow: nothing,
    hold: nothing,
    goOn: nothing,
    oneMore: nothing,
    walkNow: nothing,
    skip: nothing,
    back: nothing,
    undo: nothing,
    toCoolDown: nothing,
    end: nothing,
    somethingIsWrong: nothing,
    allRight: nothing,
    watch: nothing,
    afterGap: nothing,
    close: nothing,
  }));

  return {
    store,
    found: async (journals) => (await machinery()).found(journals),
  };
}
