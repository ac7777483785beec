import { createContext, type ReactNode, useCallback, useContext, useEffect, useState } from 'react';
import { type StoreApi, useStore } from 'zustand';
import type { BoardState } from '../../app/board-contract.ts';
import { afterPaint } from '../after-paint.ts';
import { useApp } from '../app-context.tsx';
import { useToday } from '../now/use-now.ts';
import { inputOf, type Made, madeOf } from './board-made.ts';
import type { Look } from './board-rows.ts';

interface Shared {
  readonly store: StoreApi<BoardState>;
  /** By programme id: how the leader last looked, and at whom, for the way back. */
  readonly looks: Map<string, Partial<Look>>;
  readonly last: Map<string, string>;
}

const BoardContext = createContext<Shared | null>(null);

/** The board, fetched with its store. Throws what kept it from coming. */
export function BoardProvider({ children }: { children: ReactNode }) {
  const app = useApp();
  const [shared, setShared] = useState<Shared>();
  const [failure, setFailure] = useState<{ readonly error: unknown }>();
  useEffect(() => {
    app.board().then(
      (store) => {
        setShared({ store, looks: new Map(), last: new Map() });
        // What was read ahead is shown at once, and read anew behind it.
        if (store.getState().ready) afterPaint(() => void store.getState().load());
        else void store.getState().load();
      },
      (error: unknown) => setFailure({ error }),
    );
  }, [app]);
  if (failure !== undefined) throw failure.error;
  return shared === undefined ? null : <BoardContext value={shared}>{children}</BoardContext>;
}

function useShared(): Shared {
  const shared = useContext(BoardContext);
  if (shared === null) throw new Error('the board outside of BoardProvider');
  return shared;
}

/** The board's store. Throws outside of `BoardProvider`, as all of these do. */
export const useBoardStore = (): StoreApi<BoardState> => useShared().store;

/** Part of the board's state; drawn again only when that part changes. */
export const useBoardState = <T,>(pick: (state: BoardState) => T): T =>
  useStore(useBoardStore(), pick);

/** A programme's people by weeks, and who needs a word; undefined: no such programme was sent from here. */
export function useBoard(programmeId: string): Made | undefined {
  const { store } = useShared();
  const today = useToday();
  return useBoardState((state) => {
    const input = inputOf(state, programmeId, today);
    return input && madeOf(store, input);
  });
}

/** How the leader looks at a board; it is still so after a look at one person. */
export function useLook(
  programmeId: string,
  week: number,
): readonly [Look, (part: Partial<Look>) => void] {
  const { looks } = useShared();
  const [look, setLook] = useState<Look>(() => ({
    week,
    group: '',
    show: 'all',
    sort: 'name',
    search: '',
    ...looks.get(programmeId),
  }));
  const change = useCallback(
    (part: Partial<Look>) => {
      looks.set(programmeId, { ...looks.get(programmeId), ...part });
      setLook((before) => ({ ...before, ...part }));
    },
    [looks, programmeId],
  );
  return [look, change];
}

/** Whose page was open last, so that the way back leads to the same place. */
export const useLastPerson = (): Map<string, string> => useShared().last;
