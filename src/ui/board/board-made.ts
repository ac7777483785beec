import type { StoreApi } from 'zustand';
import type { BoardState } from '../../app/board-contract.ts';
import type { Board, BoardInput } from '../../domain/board/board.ts';
import { boardOf } from '../../domain/board/board-of.ts';
import type { Due } from '../../domain/board/due.ts';
import { wordsDue } from '../../domain/board/words-due.ts';

/** A programme's people by weeks, and who needs a word. */
export interface Made {
  readonly input: BoardInput;
  readonly board: Board;
  readonly due: readonly Due[];
}

const NOBODY: BoardInput['heard'] = [];
const NO_DAYS: BoardInput['days'] = [];

/** All that the board of one programme is made of; undefined: no such programme was sent from here. */
export function inputOf(
  { programmes, heard, days, setups }: BoardState,
  programmeId: string,
  today: string,
): BoardInput | undefined {
  const programme = programmes.find(({ id }) => id === programmeId);
  if (programme === undefined) return undefined;
  const setup = setups[programmeId];
  return {
    programme,
    heard: heard[programmeId] ?? NOBODY,
    days: days[programmeId] ?? NO_DAYS,
    today,
    ...(setup === undefined ? {} : { setup }),
  };
}

const isSame = (a: BoardInput, b: BoardInput): boolean =>
  a.programme === b.programme &&
  a.heard === b.heard &&
  a.days === b.days &&
  a.setup === b.setup &&
  a.today === b.today;

/** By store, then by programme id: reckoned once, whichever page asks. */
const known = new WeakMap<StoreApi<BoardState>, Map<string, Made>>();

/** Reckoned anew only when something changed. */
export function madeOf(store: StoreApi<BoardState>, input: BoardInput): Made {
  const ofStore = known.get(store) ?? new Map<string, Made>();
  known.set(store, ofStore);
  const before = ofStore.get(input.programme.id);
  if (before !== undefined && isSame(before.input, input)) return before;
  const made = { input, board: boardOf(input), due: wordsDue(input) };
  ofStore.set(input.programme.id, made);
  return made;
}
