import { type Heard, type HeardEntry, isByHand, type KnownOf, type ToldOfSelf } from './heard.ts';

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
  const others = new Map<string, Heard[]>();
  for (const each of all.values()) {
    if (each.known?.same === undefined) continue;
    const root = rootOf(each.person, all);
    if (root === each.person) continue;
    const list = others.get(root);
    if (list === undefined) others.set(root, [each]);
    else list.push(each);
  }
  const joined = new Set([...others.values()].flat());
  return [...all.values()]
    .filter((each) => !joined.has(each))
    .map((each) => {
      const same = others.get(each.person) ?? [];
      return { heard: each, ids: [each.person, ...same.map(({ person }) => person)], others: same };
    });
}

const latest = <T extends { readonly at: number }>(list: readonly T[]): T | undefined =>
  list.reduce<T | undefined>((best, each) => (best && best.at >= each.at ? best : each), undefined);

/** What the person said of themselves last. */
export const toldBy = ({ heard, others }: BoardPerson): ToldOfSelf | undefined =>
  others.length === 0
    ? heard.told
    : latest([heard, ...others].flatMap(({ told }) => (told === undefined ? [] : [told])));

/** Every session that they told of, each id once as it was told last. */
export function toldEntries({ heard, others }: BoardPerson): readonly HeardEntry[] {
  if (others.every(({ entries }) => entries.length === 0)) return heard.entries;
  const byId = new Map<string, HeardEntry>();
  for (const entry of [heard, ...others].flatMap(({ entries }) => entries)) {
    const before = byId.get(entry.id);
    if (before === undefined || before.toldAt < entry.toldAt) byId.set(entry.id, entry);
  }
  return [...byId.values()].sort(
    (a, b) => a.startedAt - b.startedAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  );
}

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
