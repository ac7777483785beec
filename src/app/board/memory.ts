import type { Attendance } from '../../domain/board/attendance.ts';
import { goesOn } from '../../domain/board/erase.ts';
import type { Heard } from '../../domain/board/heard.ts';
import type { BoardSetup } from '../../domain/board/setup.ts';
import { groupedBy } from '../../domain/grouped-by.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import type { BoardChange, BoardState, BoardStore, Boards } from '../board-contract.ts';

type Of = Parameters<BoardStore['change']>[1];

/** What the board shows of what is kept. */
export type Shown = Pick<BoardState, 'heard' | 'days' | 'setups' | 'goesOn'>;

/** What is kept, as this tab saw it last. */
export interface Memory {
  /** What lies there now, of some keys or all. */
  absorb(here: Boards, of?: Of): void;
  apply(change: BoardChange): void;
  /** People of each programme, by its id. */
  people(): ReadonlyMap<string, number>;
  shown(programmes: readonly Programme[]): Shown;
}

/** Puts what was read in the place of what was known of the same keys. */
function replace<T>(
  map: Map<string, T>,
  read: readonly T[],
  keys: readonly string[] | undefined,
  keyOf: (value: T) => string,
): void {
  const there = new Set(read.map(keyOf));
  for (const key of keys ?? [...map.keys()]) if (!there.has(key)) map.delete(key);
  for (const each of read) map.set(keyOf(each), each);
}

const isSameList = <T>(a: readonly T[], b: readonly T[] | undefined): boolean =>
  a.length === b?.length && a.every((each, n) => each === b[n]);

interface Keyed {
  readonly key: string;
  readonly programmeId: string;
}

/** However they came, so that two tabs show the same. */
const byKey = (a: Keyed, b: Keyed): number => (a.key < b.key ? -1 : 1);

const byProgramme = <T extends Keyed>(all: Iterable<T>): ReadonlyMap<string, readonly T[]> =>
  groupedBy(all, ({ programmeId }) => programmeId);

/** By programme. A list in which nothing changed stays the same object. */
function grouped<T extends Keyed>(
  all: Iterable<T>,
  before: Readonly<Record<string, readonly T[]>>,
): Readonly<Record<string, readonly T[]>> {
  const entries = [...byProgramme(all)].map(([id, list]) => {
    const old = before[id];
    return [id, old !== undefined && isSameList(list, old) ? old : list] as const;
  });
  return Object.fromEntries(entries);
}

/** When each programme's people go; those that are kept are not in it. */
export function goings(
  boards: Boards,
  programmes: readonly Programme[],
): Readonly<Record<string, string>> {
  const [heard, days] = [byProgramme(boards.heard), byProgramme(boards.days)];
  const setups = new Map(boards.setups.map((setup) => [setup.programmeId, setup]));
  const ids = new Set([...heard.keys(), ...days.keys(), ...setups.keys()]);
  const dates = [...ids].flatMap((id): readonly [string, string][] => {
    const programme = programmes.find((each) => each.id === id);
    const kept = { heard: heard.get(id) ?? [], days: days.get(id) ?? [], setup: setups.get(id) };
    const date = goesOn(programme, kept);
    return date === undefined ? [] : [[id, date]];
  });
  return Object.fromEntries(dates);
}

/** Remembers nothing yet. */
export function createMemory(): Memory {
  const heard = new Map<string, Heard>();
  const days = new Map<string, Attendance>();
  const setups = new Map<string, BoardSetup>();
  let last: Shown = { heard: {}, days: {}, setups: {}, goesOn: {} };
  const keyOf = ({ key }: { readonly key: string }): string => key;
  const idOf = ({ programmeId }: { readonly programmeId: string }): string => programmeId;

  return {
    absorb(here, of = {}) {
      replace(heard, here.heard, of.heard, keyOf);
      replace(days, here.days, of.days, keyOf);
      replace(setups, here.setups, undefined, idOf);
    },
    apply({ gone = {}, ...change }) {
      for (const each of change.heard ?? []) heard.set(each.key, each);
      for (const each of change.days ?? []) days.set(each.key, each);
      for (const each of change.setups ?? []) setups.set(each.programmeId, each);
      for (const key of gone.heard ?? []) heard.delete(key);
      for (const key of gone.days ?? []) days.delete(key);
      for (const key of gone.setups ?? []) setups.delete(key);
    },
    people() {
      const counts = new Map<string, number>();
      for (const { programmeId } of heard.values())
        counts.set(programmeId, (counts.get(programmeId) ?? 0) + 1);
      return counts;
    },
    shown(programmes) {
      const all = {
        heard: [...heard.values()].sort(byKey),
        days: [...days.values()].sort(byKey),
        setups: [...setups.values()],
      };
      last = {
        heard: grouped(all.heard, last.heard),
        days: grouped(all.days, last.days),
        setups: Object.fromEntries(setups),
        goesOn: goings(all, programmes),
      };
      return last;
    },
  };
}
