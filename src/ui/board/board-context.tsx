import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import { type StoreApi, useStore } from 'zustand';
import type { BoardState } from '../../app/board-contract.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { useApp } from '../app-context.tsx';
import { localDate } from '../parts/today.ts';

const BoardContext = createContext<StoreApi<BoardState> | null>(null);

/** The board, fetched with its store. Throws what kept it from coming. */
export function BoardProvider({ children }: { children: ReactNode }) {
  const app = useApp();
  const [store, setStore] = useState<StoreApi<BoardState>>();
  const [failure, setFailure] = useState<{ readonly error: unknown }>();
  useEffect(() => {
    app.board().then(
      (made) => {
        setStore(() => made);
        void made.getState().load();
      },
      (error: unknown) => setFailure({ error }),
    );
  }, [app]);
  if (failure !== undefined) throw failure.error;
  return store === undefined ? null : <BoardContext value={store}>{children}</BoardContext>;
}

/** The board's store. Throws outside of `BoardProvider`, as all of these do. */
export function useBoardStore(): StoreApi<BoardState> {
  const store = useContext(BoardContext);
  if (store === null) throw new Error('the board outside of BoardProvider');
  return store;
}

export const useBoardState = <T,>(pick: (state: BoardState) => T): T =>
  useStore(useBoardStore(), pick);

/** All that the board of one programme is made of; undefined: no such programme was sent from here. */
export function useBoardInput(programmeId: string): BoardInput | undefined {
  const programme = useBoardState((b) => b.programmes.find(({ id }) => id === programmeId));
  const heard = useBoardState((b) => b.heard[programmeId]);
  const days = useBoardState((b) => b.days[programmeId]);
  const setup = useBoardState((b) => b.setups[programmeId]);
  const today = localDate(new Date());
  return useMemo(
    () =>
      programme && {
        programme,
        heard: heard ?? [],
        days: days ?? [],
        today,
        ...(setup === undefined ? {} : { setup }),
      },
    [programme, heard, days, setup, today],
  );
}
