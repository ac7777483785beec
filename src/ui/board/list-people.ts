/** Who stands on an attendance list, by group, and whether they are ticked. */
import type { Attendance } from '../../domain/board/attendance.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { calledBy, peopleOf } from '../../domain/board/people.ts';

/** One person on the list. */
export interface Listed {
  /** As in `Heard`. */
  readonly person: string;
  /** Ids of all their records: a tick may stand under any of them. */
  readonly ids: readonly string[];
  readonly name?: string;
}

/** A group on the attendance list, with its people by name. */
export interface ListedGroup {
  readonly id: string;
  readonly name: string;
  /** The programme has it no more. */
  readonly isGone: boolean;
  readonly people: readonly Listed[];
  /** As many as the leader said, or as are known where that is more. */
  readonly of: number;
}

const order = new Intl.Collator(undefined, { sensitivity: 'base', numeric: true });

/** By name; those without one last. */
function byName(a: Listed, b: Listed): number {
  if (a.name !== undefined && b.name !== undefined)
    return order.compare(a.name, b.name) || (a.person < b.person ? -1 : 1);
  if (a.name === undefined && b.name === undefined) return a.person < b.person ? -1 : 1;
  return a.name === undefined ? 1 : -1;
}

/** Groups in the programme's order; behind them, where there are people in them, those that are gone. */
export function listedBy({ programme, heard, setup }: BoardInput): readonly ListedGroup[] {
  const people = new Map<string, Listed[]>();
  for (const each of peopleOf(heard)) {
    const { name, group } = calledBy(each);
    const listed = {
      person: each.heard.person,
      ids: each.ids,
      ...(name === undefined ? {} : { name }),
    };
    people.set(group, [...(people.get(group) ?? []), listed]);
  }
  const own = new Set(programme.groups.map(({ id }) => id));
  const gone = [...people.keys()].filter((id) => !own.has(id)).sort();
  return [
    ...programme.groups.map(({ id, name }) => ({ id, name, isGone: false })),
    ...gone.map((id) => ({ id, name: id, isGone: true })),
  ].map((group) => {
    const list = (people.get(group.id) ?? []).sort(byName);
    return {
      ...group,
      people: list,
      of: Math.max(list.length, setup?.expected[group.id]?.count ?? 0),
    };
  });
}

/** Ids under which somebody is ticked on a day; empty: they are not. */
export const tickedAs = ({ ids }: Listed, day: Attendance | undefined): readonly string[] =>
  ids.filter((id) => day?.marks[id]?.present === true);

const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLocaleLowerCase();

/** Groups with those people whose name holds what is looked for; nothing looked for: all of them. */
export function matching(groups: readonly ListedGroup[], search: string): readonly ListedGroup[] {
  const wanted = plain(search.trim());
  if (wanted === '') return groups.filter(({ people }) => people.length > 0);
  return groups
    .map((group) => ({
      ...group,
      people: group.people.filter(({ name = '' }) => plain(name).includes(wanted)),
    }))
    .filter(({ people }) => people.length > 0);
}
