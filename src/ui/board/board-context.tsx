import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useState,
} from 'react';
import { type StoreApi, useStore } from 'zustand';
import type { BoardState } from '../../app/board-contract.ts';
import type { Board, BoardInput } from '../../domain/board/board.ts';
import { boardOf } from '../../domain/board/board-of.ts';
import type { Due } from '../../domain/board/due.ts';
import { wordsDue } from '../../domain/board/words-due.ts';
import { useApp } from '../app-context.tsx';
import { useToday } from '../now/use-now.ts';
import type { Look } from './board-rows.ts';

interface Shared {
  readonly store: StoreApi<BoardState>;
  /** By programme id: reckoned once, whichever page asks. */
  readonly made: Map<string, Made>;
  /** By programme id: how the leader last looked, and at whom, for the way back. */
  readonly looks: Map<string, Partial<Look>>;
  readonly last: Map<string, string>;
}

interface Made {
  readonly input: BoardInput;
  readonly board: Board;
  readonly due: readonly Due[];
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
        setShared({ store, made: new Map(), looks: new Map(), last: new Map() });
        void store.getState().load();
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

export const useBoardState = <T,>(pick: (state: BoardState) => T): T =>
  useStore(useBoardStore(), pick);

/** All that the board of one programme is made of; undefined: no such programme was sent from here. */
export function useBoardInput(programmeId: string): BoardInput | undefined {
  const programme = useBoardState((b) => b.programmes.find(({ id }) => id === programmeId));
  const heard = useBoardState((b) => b.heard[programmeId]);
  const days = useBoardState((b) => b.days[programmeId]);
  const setup = useBoardState((b) => b.setups[programmeId]);
  const today = useToday();
  return useMemo(
    () =>
      programme && {
        programme,
        heard: heard ?? NOBODY,
        days: days ?? NO_DAYS,
        today,
        ...(setup === undefined ? {} : { setup }),
      },
    [programme, heard, days, setup, today],
  );
}

const NOBODY: BoardInput['heard'] = [];
const NO_DAYS: BoardInput['days'] = [];

const isSame = (a: BoardInput, b: BoardInput): boolean =>
  a.programme === b.programme &&
  a.heard === b.heard &&
  a.days === b.days &&
  a.setup === b.setup &&
  a.today === b.today;

/** A programme's people by weeks, and who needs a word; reckoned anew only when something changed. */
export function useBoard(programmeId: string): Made | undefined {
  const { made } = useShared();
  const input = useBoardInput(programmeId);
  return useMemo(() => {
    if (input === undefined) return undefined;
    const known = made.get(programmeId);
    if (known !== undefined && isSame(known.input, input)) return known;
    const board = boardOf(input);
    const next = { input, board, due: wordsDue(input) };
    made.set(programmeId, next);
    return next;
  }, [made, programmeId, input]);
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
