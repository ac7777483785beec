/** Which people stand on the board, and in what order. */
import type { Board, GroupBoard, PersonRow } from '../../domain/board/board.ts';
import { DUE_CODES, type Due } from '../../domain/board/due.ts';

/** Whom the leader can look at: by what is known of the week, or who needs a word. */
export const SHOWS = ['all', 'heard', 'silent', 'due'] as const;
/** Orders of the people; `due` has the gravest first, `done` and `gap` the most. */
export const SORTS = ['name', 'due', 'done', 'gap'] as const;

/** What the leader looks at. */
export interface Look {
  /** From 1. */
  readonly week: number;
  /** Id; empty: all. */
  readonly group: string;
  readonly show: (typeof SHOWS)[number];
  readonly sort: (typeof SORTS)[number];
  readonly search: string;
}

/** Who needs a word, by person: looked up for every row. */
export type DueBy = ReadonlyMap<string, Due>;

/** A group with those of its people who are looked at. */
export interface Section {
  readonly group: GroupBoard;
  readonly rows: readonly PersonRow[];
}

const collator = new Intl.Collator(undefined, { sensitivity: 'base', numeric: true });

/** Letters without their marks: "Zoe" finds "Zoë". */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLocaleLowerCase();

function byName(a: PersonRow, b: PersonRow): number {
  if (a.name !== undefined && b.name !== undefined)
    return collator.compare(a.name, b.name) || (a.person < b.person ? -1 : 1);
  if (a.name === undefined && b.name === undefined) return a.person < b.person ? -1 : 1;
  return a.name === undefined ? 1 : -1;
}

const shows: Readonly<Record<Look['show'], (row: PersonRow, week: number, due: DueBy) => boolean>> =
  {
    all: () => true,
    heard: ({ cells }, week) => {
      const state = cells[week - 1]?.state;
      return state === 'heard' || state === 'none-told';
    },
    silent: ({ cells }, week) => cells[week - 1]?.state === 'unknown',
    due: ({ person }, _, due) => due.has(person),
  };

/** Higher goes first; the same: by name. Never by a rating alone: only by its distance from the target. */
const ranks: Readonly<Record<Look['sort'], (row: PersonRow, week: number, due: DueBy) => number>> =
  {
    name: () => 0,
    due: ({ person }, _, due) => {
      const code = due.get(person)?.reasons[0].code;
      return code === undefined ? Number.NEGATIVE_INFINITY : -DUE_CODES.indexOf(code);
    },
    done: ({ cells }, week) => {
      const cell = cells[week - 1];
      if (cell?.state === 'heard') return cell.done;
      return cell?.state === 'none-told' ? -1 : Number.NEGATIVE_INFINITY;
    },
    gap: ({ cells }, week) => cells[week - 1]?.gap ?? Number.NEGATIVE_INFINITY,
  };

/** Groups in the programme's order, each with its people as they are looked at. */
export function sectionsOf(board: Board, due: DueBy, look: Look): readonly Section[] {
  const words = plain(look.search).split(/\s+/).filter(Boolean);
  const [fits, rank] = [shows[look.show], ranks[look.sort]];
  const groups = board.groups.filter(({ id }) => look.group === '' || id === look.group);
  const byGroup = new Map(groups.map(({ id }) => [id, [] as { row: PersonRow; rank: number }[]]));
  for (const row of board.people) {
    const list = byGroup.get(row.group);
    if (list === undefined || !fits(row, look.week, due)) continue;
    const name = words.length === 0 ? '' : plain(row.name ?? '');
    if (words.every((word) => name.includes(word)))
      list.push({ row, rank: rank(row, look.week, due) });
  }
  return groups.map((group) => ({
    group,
    rows: (byGroup.get(group.id) ?? [])
      .sort((a, b) => (a.rank === b.rank ? byName(a.row, b.row) : b.rank > a.rank ? 1 : -1))
      .map(({ row }) => row),
  }));
}

/** How many rows are drawn before the leader asks for more. */
export const ROWS = 40;

/** Of each group as many as leave room for the others. */
export const rowsAtFirst = (groups: number): number => Math.max(8, Math.floor(ROWS / groups));
