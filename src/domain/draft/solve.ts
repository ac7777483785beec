import { BOUNDS, type Half, longestAfter } from './bounds.ts';
import { type Climb, climb } from './climb.ts';
import type { Ground, GroundWish } from './ground.ts';
import { needOf, todayOf } from './need.ts';
import { pinnedWeeks } from './pinned.ts';
import { groundWishes, rowsToTry } from './rows.ts';
import type { Climber } from './week-limits.ts';
import type { Wish, WishGroup } from './wish.ts';

/** The best draft that was found: the shared main sets, and every group's way over them. */
export interface Solution {
  readonly ground: Ground;
  /** In the order of the groups. */
  readonly climbs: readonly Climb[];
}

const climberOf = (wish: Wish, group: WishGroup): Climber => ({
  arrive: group.arrive,
  today: todayOf(group),
  need: needOf(group.arrive, wish.goal.distanceM),
  pinned: pinnedWeeks(wish, group.id, group.arrive),
});

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** More than any group can miss. */
const ONE_LATE = 100_000;

/** What is compared first: how many groups do not arrive, then how much they miss together. */
const lateness = (missing: Half): number => (missing > 0 ? ONE_LATE + missing : 0);
const missOf = (climbs: readonly Climb[]): number =>
  sum(climbs.map(({ missing }) => lateness(missing)));

function best(wish: Wish, rows: GroundWish): Solution | undefined {
  const climbers = wish.groups.map((group) => climberOf(wish, group));
  let found: Solution | undefined;
  for (const ground of rowsToTry(rows)) {
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
    missing += lateness(one.missing);
    if (isDearer && missing >= missOf(found.climbs)) return undefined;
  }
  return climbers.flatMap((_, n) => climbs.get(n) ?? []);
}

/** The order of objective.ts. */
function isBetter(a: Solution, b: Solution): boolean {
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
  for (const rows of groundWishes(wish)) {
    const found = best(wish, rows);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Even at the largest steps, week after week, these weeks are too few. Pinned ones aside. */
function isOutOfReach({ arrive, today, need }: Climber, weeks: number, first: Half): boolean {
  let [main, hard] = [first, today + BOUNDS.firstHard];
  let stretch = Math.max(BOUNDS.firstStretch, today);
  for (let week = 1; week < weeks - 1; week += 1) {
    main += BOUNDS.mainRise;
    hard += BOUNDS.rise;
    stretch = longestAfter(stretch);
  }
  const least = Math.ceil(need.share * need.main);
  return main < need.main || stretch < need.stretch || (arrive !== 'run' && hard < least);
}

/** Whether a group arrives in another wish, over some row that is tried. */
export function arrivesIn(wish: Wish, group: string): boolean {
  const one = wish.groups.find(({ id }) => id === group);
  if (one === undefined) return false;
  const climber = climberOf(wish, one);
  const isFree = (wish.pins ?? []).length === 0;
  for (const rows of groundWishes(wish)) {
    if (isFree && isOutOfReach(climber, wish.weeks, rows.first)) return false;
    const climbs = rowsToTry(rows, 1).map((ground) => climb(climber, ground));
    // Rows that nobody finds a way over are no answer; those after them aim lower.
    if (climbs.some((one) => one !== undefined)) return climbs.some((one) => one?.missing === 0);
  }
  return false;
}
