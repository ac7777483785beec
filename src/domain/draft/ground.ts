import { BOUNDS, type Half } from './bounds.ts';
import { groundCost, groundLightCost, WEIGHTS, waysOf } from './objective.ts';

/** A full week, one that a pinned session makes shorter, or the light one at the end. */
export type WeekKind = 'full' | 'aside' | 'light';

/** The main sets that all groups share, week by week. */
export interface Ground {
  readonly mains: readonly Half[];
  readonly kinds: readonly WeekKind[];
  readonly cost: number;
}

/** What the row of shared main sets has to keep to, and what it should reach. */
export interface GroundWish {
  readonly weeks: number;
  /** Longest that the first main set may be. */
  readonly first: Half;
  /** Shortest that it should be. */
  readonly least?: Half;
  /** Longest that any may be. */
  readonly longest: Half;
  /** What the last full week should reach. */
  readonly top: Half;
  /** Lengths that a pinned session leaves for a week. */
  readonly pinned: readonly (readonly Half[] | undefined)[];
}

/** A row that is not finished; `last` is its last full week. */
interface Row extends Ground {
  readonly last: Half | undefined;
}

const evens = (from: Half, to: Half): readonly Half[] => {
  const start = from + (from % 2);
  return Array.from(
    { length: Math.max(0, Math.floor((to - start) / 2) + 1) },
    (_, n) => start + 2 * n,
  );
};

/** Somebody new to running needs sets: of this length, or half a minute before it. */
const divides = (main: Half): boolean => waysOf(main) + waysOf(main - 1) > 0;

/** Whole minutes that may follow, and the ends of the range where those are none. */
function fullMains(
  { first, least = 0, longest, top }: GroundWish,
  last: Half | undefined,
): readonly Half[] {
  const rise = last === undefined ? first : last + BOUNDS.mainRise;
  const from = Math.min(longest, Math.max(BOUNDS.main.min, last ?? least));
  const to = Math.max(from, Math.min(longest, rise, top));
  const exact = last === undefined ? [to] : [from, to];
  return [...new Set([...evens(from, to), ...exact])].filter(divides);
}

function lightMains(last: Half): readonly Half[] {
  const { min, max } = BOUNDS.light;
  const from = Math.max(BOUNDS.main.lightMin, Math.ceil(min * last));
  const mains = evens(from, Math.floor(max * last)).filter(divides);
  return mains.length > 0 ? mains : [Math.min(BOUNDS.main.lightMin, last)];
}

const add = (row: Row, main: Half, kind: WeekKind, cost: number): Row => ({
  mains: [...row.mains, main],
  kinds: [...row.kinds, kind],
  cost: row.cost + cost,
  last: kind === 'full' ? main : row.last,
});

function fullWeek(wish: GroundWish, week: number, row: Row): readonly Row[] {
  const { last } = row;
  const pinned = wish.pinned[week];
  return (pinned ?? fullMains(wish, last)).map((main) => {
    // A pinned session that is shorter than the week before is a pause in the rise, not its end.
    const isAside = pinned !== undefined && last !== undefined && main < last;
    return isAside
      ? add(row, main, 'aside', WEIGHTS.groundAside)
      : add(row, main, 'full', groundCost(main, last));
  });
}

function lightWeek(wish: GroundWish, row: Row): readonly Row[] {
  const last = row.last ?? BOUNDS.main.min;
  const short = WEIGHTS.groundShort * Math.max(0, wish.top - last);
  const over = WEIGHTS.groundOver * Math.max(0, last - wish.top);
  const mains = wish.pinned[wish.weeks - 1] ?? lightMains(last);
  return mains.map((main) => add(row, main, 'light', short + over + groundLightCost(main, last)));
}

const byCost = (a: Row, b: Row): number => {
  if (a.cost !== b.cost) return a.cost - b.cost;
  const n = a.mains.findIndex((main, week) => main !== b.mains[week]);
  return n < 0 ? 0 : (a.mains[n] ?? 0) - (b.mains[n] ?? 0);
};

/** The cheapest rows of each last full week: what follows depends on nothing else. */
function keep(rows: readonly Row[], count: number): readonly Row[] {
  const groups = new Map<Half | undefined, Row[]>();
  for (const row of [...rows].sort(byCost)) {
    const group = groups.get(row.last) ?? [];
    if (group.length < count) group.push(row);
    groups.set(row.last, group);
  }
  return [...groups.values()].flat();
}

/** The `count` cheapest rows of main sets, in order of their cost: exact, by dynamic programming. */
export function grounds(wish: GroundWish, count: number): readonly Ground[] {
  let rows: readonly Row[] = [{ mains: [], kinds: [], cost: 0, last: undefined }];
  for (let week = 0; week < wish.weeks - 1; week += 1)
    rows = keep(
      rows.flatMap((row) => fullWeek(wish, week, row)),
      count,
    );
  return rows
    .flatMap((row) => lightWeek(wish, row))
    .sort(byCost)
    .slice(0, count);
}
