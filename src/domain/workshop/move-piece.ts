import type { Item, Plan } from '../programme/plan.ts';
import { PARTS } from '../programme/plan.ts';
import { fail } from '../result.ts';
import type { PiecePlace } from './pieces.ts';
import { above, inside, itemAt, itemsIn, spliced, withItems } from './pieces.ts';
import type { EditResult } from './plan-edits.ts';
import { bounded } from './plan-edits.ts';

type By = 1 | -1;

const without = (items: readonly Item[], n: number): readonly Item[] => spliced(items, n, 1);

/** In its own row of items: past the next, or into it when a step comes to a repeat. */
function moveWithin(plan: Plan, at: PiecePlace, item: Item, by: By): EditResult {
  const row = above(at);
  const items = itemsIn(plan, row) ?? [];
  const n = at.path.at(-1) ?? 0;
  const next = items[n + by];
  if (item.kind === 'step' && next?.kind === 'repeat') {
    const to = by === 1 ? 0 : next.items.length;
    const joined: Item = { ...next, items: spliced(next.items, to, 0, item) };
    const left = without(spliced(items, n + by, 1, joined), n);
    return bounded(withItems(plan, row, left), inside(inside(row, by === 1 ? n : n - 1), to));
  }
  return bounded(
    withItems(plan, row, spliced(without(items, n), n + by, 0, item)),
    inside(row, n + by),
  );
}

/** Out of a repeat, to stand before or behind it. What it leaves must hold something still. */
function moveOut(plan: Plan, at: PiecePlace, item: Item, by: By): EditResult {
  const from = above(at);
  const items = itemsIn(plan, from) ?? [];
  if (items.length === 1) return fail('sets-empty');
  const left = withItems(plan, from, without(items, at.path.at(-1) ?? 0));
  const row = above(from);
  const to = (from.path.at(-1) ?? 0) + (by === 1 ? 1 : 0);
  const outside = itemsIn(left, row) ?? [];
  return bounded(withItems(left, row, spliced(outside, to, 0, item)), inside(row, to));
}

/** Into the part before or after. */
function moveAcross(plan: Plan, at: PiecePlace, item: Item, by: By): EditResult {
  const part = PARTS[PARTS.indexOf(at.part) + by];
  if (part === undefined) return fail('edge');
  const to = by === 1 ? 0 : plan[part].length;
  const moved: Plan = {
    ...plan,
    [at.part]: without(plan[at.part], at.path[0] ?? 0),
    [part]: spliced(plan[part], to, 0, item),
  };
  return bounded(moved, { part, path: [to] });
}

/**
 * Moves a piece one place up (-1) or down (1): a step goes into and out of the repeats that it
 * comes to, a repeat goes past other pieces whole, and both go on into the next part.
 */
export function movePiece(plan: Plan, at: PiecePlace, by: By): EditResult {
  const item = itemAt(plan, at);
  if (item === undefined) return fail('gone');
  const items = itemsIn(plan, above(at)) ?? [];
  const to = (at.path.at(-1) ?? 0) + by;
  if (to >= 0 && to < items.length) return moveWithin(plan, at, item, by);
  return at.path.length > 1 ? moveOut(plan, at, item, by) : moveAcross(plan, at, item, by);
}
