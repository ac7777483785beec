import { groupedBy } from '../grouped-by.ts';
import type { Board, BoardInput, GroupBoard, GroupWeek, PersonRow } from './board.ts';
import { gapOf, isKnown } from './cells.ts';
import { everybodyIn } from './row.ts';
import { spreadOf } from './spread.ts';

/** A group in one week, over all its people's sessions. @param number from 1 */
function groupWeek(
  number: number,
  target: number,
  rows: readonly PersonRow[],
  of: number,
): GroupWeek {
  const [rated, gaps]: [number[], number[]] = [[], []];
  let [heard, sessions, niggles, signs, cutShort] = [0, 0, 0, 0, 0];
  for (const { cells } of rows) {
    const cell = cells[number - 1];
    if (cell === undefined) continue;
    if (isKnown(cell)) heard += 1;
    sessions += cell.sessions.length;
    niggles += cell.niggles;
    signs += cell.signs;
    cutShort += cell.cutShort;
    for (const session of cell.sessions) {
      if (session.felt === undefined) continue;
      rated.push(session.felt);
      gaps.push(gapOf(session) ?? 0);
    }
  }
  const [felt, gap] = [spreadOf(rated), spreadOf(gaps)];
  return {
    week: number,
    heard,
    of,
    sessions,
    ...(felt && { felt }),
    ...(gap && { gap }),
    target,
    niggles,
    signs,
    cutShort,
  };
}

/** How many are in a group: as the leader said, or as many as are known where that is more. */
export const sizeOf = ({ setup }: BoardInput, group: string, known: number): number =>
  Math.max(setup?.expected[group]?.count ?? 0, known);

function groupBoard(
  input: BoardInput,
  group: { readonly id: string; readonly name: string },
  number: number,
  rows: readonly PersonRow[],
): GroupBoard {
  const people = sizeOf(input, group.id, rows.length);
  return {
    ...group,
    number,
    people,
    weeks: input.programme.weeks.map(({ effort }, n) =>
      groupWeek(n + 1, effort / 10, rows, people),
    ),
  };
}

const nameOf = ({ name = '', person }: PersonRow): string => `${name.toLowerCase()} ${person}`;

/** People by group, each in the order of names; those without one by their id. */
function byGroup(rows: readonly PersonRow[]): ReadonlyMap<string, readonly PersonRow[]> {
  const groups = groupedBy(rows, ({ group }) => group);
  for (const list of groups.values()) {
    const keys = new Map(list.map((row) => [row, nameOf(row)]));
    list.sort((a, b) => ((keys.get(a) ?? '') < (keys.get(b) ?? '') ? -1 : 1));
  }
  return groups;
}

const known = new WeakMap<BoardInput, Board>();

function made(input: BoardInput): Board {
  const { calendar, people } = everybodyIn(input);
  const rows = byGroup(people.map(({ row }) => row));
  const own = input.programme.groups.map(({ id, name }) => ({ id, name }));
  const ids = new Set(own.map(({ id }) => id));
  const gone = [...rows.keys()].filter((id) => !ids.has(id)).sort();
  const groups = [...own, ...gone.map((id) => ({ id, name: id }))];
  return {
    week: calendar.week,
    people: groups.flatMap(({ id }) => rows.get(id) ?? []),
    groups: groups.map((group, n) => groupBoard(input, group, n + 1, rows.get(group.id) ?? [])),
  };
}

/**
 * People by weeks, and groups by weeks. What somebody told is set against what was meant for them,
 * never against what others told: raw ratings of two people do not compare (Roos 2018,
 * doi 10.1123/ijspp.2017-0707), and about a point above the target is ordinary (Barnes 2017,
 * doi 10.1186/s40798-017-0105-0). People stand in the order of groups and names, and in no other.
 *
 * Linear in sessions, and what did not change since it was asked last is not computed again: rows
 * are kept by the object that a person is.
 */
export function boardOf(input: BoardInput): Board {
  const found = known.get(input);
  if (found !== undefined) return found;
  const board = made(input);
  known.set(input, board);
  return board;
}
