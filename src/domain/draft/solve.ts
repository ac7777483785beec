import { BOUNDS, type Half, halfOf } from './bounds.ts';
import { type Climb, type Climber, climb } from './climb.ts';
import { type Ground, type GroundWish, grounds } from './ground.ts';
import { needOf, onFeetToday, todayOf } from './need.ts';
import { wholeMain } from './objective.ts';
import { optionsOf } from './option.ts';
import { pinnedMains, pinnedWeeks } from './pinned.ts';
import type { Arrival, Wish, WishGroup } from './wish.ts';

/** The best draft that was found: the shared main sets, and every group's way over them. */
export interface Solution {
  readonly ground: Ground;
  /** In the order of the groups. */
  readonly climbs: readonly Climb[];
}

/** No programme needs a longer main set than this to be worth coming for: 20 min. */
const TOP_MIN: Half = 40;
/**
 * Rows of main sets that are tried when somebody does not arrive on the cheapest. In a small
 * programme these are all; in a larger one the rows after the sixth seldom differ in more than the
 * order of their weeks.
 */
const triedOf = ({ weeks }: Wish, longest: Half): number =>
  weeks <= 3 && longest <= TOP_MIN ? 2000 : 6;
/** Where nobody finds a way over long main sets, shorter ones are aimed at. */
const TOPS: readonly Half[] = [160, 120, 80, TOP_MIN];

/** The shared main set with which a group arrives. */
export const neededMain = (arrive: Arrival, distanceM: number): Half =>
  wholeMain(needOf(arrive, distanceM).main, arrive !== 'run');

export const longestMain = ({ session }: Wish): Half => halfOf(session) - 2 * BOUNDS.ends;

function groundWish(wish: Wish, together: boolean): GroundWish {
  const longest = longestMain(wish);
  const needed = wish.groups.map(({ arrive }) => neededMain(arrive, wish.goal.distanceM));
  const onFeet = wish.groups.map(onFeetToday);
  return {
    weeks: wish.weeks,
    first: Math.min(longest, Math.min(...onFeet) + BOUNDS.firstMain),
    longest,
    top: Math.min(longest, Math.max(TOP_MIN, ...needed)),
    pinned: together ? fittingMains(wish, longest) : Array(wish.weeks).fill(undefined),
  };
}

/** What is tried, in order: together with pinned sessions, without, and then ever shorter. */
function* rowsOf(wish: Wish): Generator<GroundWish> {
  if ((wish.pins ?? []).length > 0) yield groundWish(wish, true);
  const apart = groundWish(wish, false);
  yield apart;
  for (const top of TOPS) if (top < apart.top) yield { ...apart, top };
}

/** Of the lengths that a pinned session leaves for a week, those that every group can fill. */
function fittingMains(wish: Wish, longest: Half): readonly (readonly Half[] | undefined)[] {
  const arrivals = [...new Set(wish.groups.map(({ arrive }) => arrive))];
  return pinnedMains(wish, longest).map((mains) => {
    const fitting = mains?.filter((main) =>
      arrivals.every((arrive) => optionsOf(main, arrive).length > 0),
    );
    return fitting === undefined || fitting.length === 0 ? undefined : fitting;
  });
}

const climberOf = (wish: Wish, group: WishGroup): Climber => ({
  arrive: group.arrive,
  today: todayOf(group),
  need: needOf(group.arrive, wish.goal.distanceM),
  pinned: pinnedWeeks(wish, group.id, group.arrive),
});

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** What is compared first: how much all groups miss, together. */
const missOf = (climbs: readonly Climb[]): number => sum(climbs.map(({ missing }) => missing));

function best(wish: Wish, rows: GroundWish): Solution | undefined {
  const climbers = wish.groups.map((group) => climberOf(wish, group));
  let found: Solution | undefined;
  for (const ground of grounds(rows, triedOf(wish, rows.longest))) {
    if (found !== undefined && ground.cost > found.ground.cost && missOf(found.climbs) === 0) break;
    const climbs = climbAll(climbers, ground, found);
    if (climbs === undefined) continue;
    const solution = { ground, climbs };
    if (found === undefined || isBetter(solution, found)) found = solution;
  }
  return found;
}

/** Everybody's way over a ground; nothing when one has none, or when it cannot be the better. */
function climbAll(
  climbers: readonly Climber[],
  ground: Ground,
  found: Solution | undefined,
): readonly Climb[] | undefined {
  // Those who missed most before are asked first: where they miss as much, the rest need no answer.
  const missed = (n: number): Half => found?.climbs[n]?.missing ?? 0;
  const order = climbers.map((_, n) => n).sort((a, b) => missed(b) - missed(a));
  const isDearer = found !== undefined && ground.cost > found.ground.cost;
  const climbs = new Map<number, Climb>();
  let missing = 0;
  for (const n of order) {
    const one = climb(climbers[n] as Climber, ground);
    if (one === undefined) return undefined;
    climbs.set(n, one);
    missing += one.missing;
    if (isDearer && missing >= missOf(found.climbs)) return undefined;
  }
  return climbers.flatMap((_, n) => climbs.get(n) ?? []);
}

/** The order of objective.ts. */
export function isBetter(a: Solution, b: Solution): boolean {
  const [missA, missB] = [missOf(a.climbs), missOf(b.climbs)];
  if (missA !== missB) return missA < missB;
  if (a.ground.cost !== b.ground.cost) return a.ground.cost < b.ground.cost;
  return sum(a.climbs.map(({ cost }) => cost)) < sum(b.climbs.map(({ cost }) => cost));
}

/**
 * The best draft for a wish. The groups end together with pinned sessions where that leaves
 * everybody a way; otherwise with each other. Nothing when no way keeps all bounds.
 */
export function solve(wish: Wish): Solution | undefined {
  for (const rows of rowsOf(wish)) {
    const found = best(wish, rows);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** What a group would miss in another wish, on its best row; nothing when there is no way at all. */
export function missingIn(wish: Wish, group: string): Half | undefined {
  const one = wish.groups.find(({ id }) => id === group);
  if (one === undefined) return undefined;
  for (const rows of rowsOf(wish))
    for (const ground of grounds(rows, 1)) {
      const found = climb(climberOf(wish, one), ground);
      if (found !== undefined) return found.missing;
    }
  return undefined;
}
