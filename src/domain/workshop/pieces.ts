import type { Item, Part, Plan, Step } from '../programme/plan.ts';
import { PARTS } from '../programme/plan.ts';

/**
 * Where a piece of a plan stands: its part, then its index from 0 at each depth. An empty path is
 * the part itself, which holds pieces and is none.
 */
export interface PiecePlace {
  readonly part: Part;
  readonly path: readonly number[];
}

/** A step or a repeat, as a row of its own. */
export interface Piece {
  readonly place: PiecePlace;
  readonly item: Item;
  /** Steps, and repeats, counted from 1 through the whole plan: what the row is called. */
  readonly number: number;
}

/** The pieces of each part in the order of reading; a repeat stands before what it repeats. */
export function piecesOf(plan: Plan): Readonly<Record<Part, readonly Piece[]>> {
  const counted = { step: 0, repeat: 0 };
  const rows = (part: Part, items: readonly Item[], above: readonly number[]): Piece[] =>
    items.flatMap((item, n) => {
      const path = [...above, n];
      counted[item.kind] += 1;
      const piece: Piece = { place: { part, path }, item, number: counted[item.kind] };
      return item.kind === 'step' ? [piece] : [piece, ...rows(part, item.items, path)];
    });
  const [warmUp, main, coolDown] = PARTS.map((part) => rows(part, plan[part], []));
  return { 'warm-up': warmUp ?? [], main: main ?? [], 'cool-down': coolDown ?? [] };
}

/** What stands at a place; nothing when nothing does, or when the place is a part. */
export function itemAt(plan: Plan, { part, path }: PiecePlace): Item | undefined {
  let items: readonly Item[] = plan[part];
  let item: Item | undefined;
  for (const n of path) {
    item = items[n];
    if (item === undefined) return undefined;
    items = item.kind === 'repeat' ? item.items : [];
  }
  return item;
}

/** The items that a part or a repeat holds; nothing when the place holds none. */
export function itemsIn(plan: Plan, place: PiecePlace): readonly Item[] | undefined {
  if (place.path.length === 0) return plan[place.part];
  const item = itemAt(plan, place);
  return item?.kind === 'repeat' ? item.items : undefined;
}

/** What a place stands in. */
export const above = ({ part, path }: PiecePlace): PiecePlace => ({
  part,
  path: path.slice(0, -1),
});

/** A place in a place. */
export const inside = ({ part, path }: PiecePlace, n: number): PiecePlace => ({
  part,
  path: [...path, n],
});

/** How many repeats stand in one another here: 0 for a step, 2 for rounds of sets. */
export const repeatsDeep = (item: Item): number =>
  item.kind === 'step' ? 0 : 1 + Math.max(0, ...item.items.map(repeatsDeep));

/** Every step of a plan once, repeats not written out. */
export const stepsOf = (items: readonly Item[]): readonly Step[] =>
  items.flatMap((item) => (item.kind === 'step' ? [item] : stepsOf(item.items)));

/** The plan with other items in a place that holds some. */
export function withItems(plan: Plan, place: PiecePlace, items: readonly Item[]): Plan {
  const put = (within: readonly Item[], path: readonly number[]): readonly Item[] => {
    const [n, ...rest] = path;
    if (n === undefined) return items;
    return within.map((item, at) =>
      at === n && item.kind === 'repeat' ? { ...item, items: put(item.items, rest) } : item,
    );
  };
  return { ...plan, [place.part]: put(plan[place.part], place.path) };
}

/** The same items with `remove` of them taken away at a place and others put there. */
export const spliced = (
  items: readonly Item[],
  at: number,
  remove: number,
  ...put: readonly Item[]
): readonly Item[] => [...items.slice(0, at), ...put, ...items.slice(at + remove)];
