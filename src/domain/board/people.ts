import { groupedBy } from '../grouped-by.ts';
import { type Heard, type HeardEntry, isByHand, type KnownOf, type ToldOfSelf } from './heard.ts';
import { mergeEntries } from './merge.ts';
import { laterSaid } from './register.ts';

/** One person, of one or several records: somebody who was written in by hand may have told since. */
export interface BoardPerson {
  /** The record that the others are the same as. */
  readonly heard: Heard;
  /** Ids of all their records, by which attendance knows them. */
  readonly ids: readonly string[];
  readonly others: readonly Heard[];
}

/** Where a chain of "is the same as" ends; one that leads round in a ring ends at its first id. */
function rootOf(person: string, all: ReadonlyMap<string, Heard>): string {
  const seen = [person];
  for (let at = person; ; ) {
    const next = all.get(at)?.known?.same;
    if (next === undefined || !all.has(next)) return at;
    if (seen.includes(next)) return [...seen].sort()[0] ?? at;
    seen.push(next);
    at = next;
  }
}

/** Records put together by who they are, in the order in which they came. */
export function peopleOf(heard: readonly Heard[]): readonly BoardPerson[] {
  const all = new Map(heard.map((each) => [each.person, each]));
  const roots = groupedBy(all.values(), (each) =>
    each.known?.same === undefined ? each.person : rootOf(each.person, all),
  );
  return [...all.values()].flatMap((each): readonly BoardPerson[] => {
    const { person } = each;
    const others = (roots.get(person) ?? []).filter((other) => other !== each);
    return roots.has(person)
      ? [{ heard: each, ids: [person, ...others.map((other) => other.person)], others }]
      : [];
  });
}

const latest = <T extends { readonly at: number }>(list: readonly T[]): T | undefined =>
  list.reduce<T | undefined>(laterSaid, undefined);

/** What the person said of themselves last. */
export const toldBy = ({ heard, others }: BoardPerson): ToldOfSelf | undefined =>
  others.length === 0
    ? heard.told
    : latest([heard, ...others].flatMap(({ told }) => (told === undefined ? [] : [told])));

/** Every session that they told of, each id once as it was told last. */
export const toldEntries = ({ heard, others }: BoardPerson): readonly HeardEntry[] =>
  others.reduce((told, { entries }) => mergeEntries(told, entries), heard.entries);

/**
 * The leader's own words for them go before what they told. What was written of them before they
 * told, as somebody by hand, gives a name; their group is then the one that they told.
 */
export function calledBy(person: BoardPerson): {
  readonly name?: string;
  readonly group: string;
  readonly byHand: boolean;
} {
  const { heard, others } = person;
  const told = toldBy(person);
  const known = others.flatMap((each): KnownOf[] => (each.known ? [each.known] : []));
  const before = latest(known.filter(({ name }) => name !== undefined));
  const name = heard.known?.name ?? before?.name ?? told?.name;
  const by = latest(known.filter(({ group }) => group !== undefined));
  const group = heard.known?.group ?? told?.group ?? by?.group ?? '';
  return { ...(name !== undefined && { name }), group, byHand: isByHand(heard) && !told };
}
