import { BOUNDS, type Half, halfOf } from './bounds.ts';
import { type Ground, type GroundWish, grounds } from './ground.ts';
import { needOf, onFeetToday } from './need.ts';
import { wholeMain } from './objective.ts';
import { optionsOf } from './option.ts';
import { pinnedMains } from './pinned.ts';
import type { Arrival, Wish } from './wish.ts';

/** No programme needs a longer main set than this to be worth coming for: 20 min. */
const TOP_MIN: Half = 40;
/** Where nobody finds a way over long main sets, shorter ones are aimed at. */
const TOPS: readonly Half[] = [160, 120, 80, TOP_MIN];
/** In a programme of three weeks and short sessions these are all rows. */
const ALL = 2000;
/** Of a larger one, so many cheapest rows are tried, and so many with a longer first main set. */
const CHEAPEST = 6;
const LONGER = 3;

/** The shared main set with which a group arrives. */
export const neededMain = (arrive: Arrival, distanceM: number): Half =>
  wholeMain(needOf(arrive, distanceM).main, arrive !== 'run');

/** The longest main set that a session has room for. */
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

/** What rows may look like, in order: together with pinned sessions, without, then ever shorter. */
export function* groundWishes(wish: Wish): Generator<GroundWish> {
  if ((wish.pins ?? []).length > 0) yield groundWish(wish, true);
  const apart = groundWish(wish, false);
  yield apart;
  for (const top of TOPS) if (top < apart.top) yield { ...apart, top };
}

/**
 * Rows to be tried, in order of their cost: all of a small programme. Of a larger one the cheapest,
 * and some that begin with a longer main set, since who can run for long already needs the room
 * from the start.
 */
export function rowsToTry(wish: GroundWish, cheapest = CHEAPEST): readonly Ground[] {
  if (wish.weeks <= 3 && wish.longest <= TOP_MIN) return grounds(wish, ALL);
  const rows = [...grounds(wish, cheapest)];
  const shortest = rows[0]?.mains[0] ?? 0;
  const room = Math.min(wish.first, wish.top) - shortest;
  for (let n = 1; n <= LONGER; n += 1) {
    const least = shortest + Math.floor((room * n) / LONGER);
    if (least > (rows.at(-1)?.mains[0] ?? 0)) rows.push(...grounds({ ...wish, least }, 1));
  }
  return rows.sort((a, b) => a.cost - b.cost);
}
