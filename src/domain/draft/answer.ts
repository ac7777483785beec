import { SESSION_MAX } from '../programme/bounds.ts';
import type { Ms } from '../units.ts';
import { BOUNDS, type Half, msOfHalf } from './bounds.ts';
import type { Climb } from './climb.ts';
import { needOf } from './need.ts';
import { longestMain, neededMain } from './rows.ts';
import { arrivesIn } from './solve.ts';
import { ARRIVALS, type Arrival, type Wish, type WishGroup } from './wish.ts';

/** What was asked for and how far the draft comes. */
export type Reached =
  /** The longest run without a walk. */
  | { readonly code: 'run-on'; readonly reached: Ms; readonly needed: Ms }
  /** The longest session, its warm-up and cool-down walked too. */
  | { readonly code: 'on-feet'; readonly reached: Ms; readonly needed: Ms }
  /** How much of the longest main set is running, or brisk walking: in minutes. */
  | { readonly code: 'share'; readonly reached: Ms; readonly needed: Ms };

/** What would have to be otherwise. More than one: all of them together. */
export interface Instead {
  /** Sessions of this length. */
  readonly session?: Ms;
  /** This many weeks. */
  readonly weeks?: number;
  /** The pinned sessions are in the way. */
  readonly pins?: true;
  /** Nothing else: the main sets that it shares with the others do not suit it. */
  readonly alone?: true;
}

/** How a group stands before the event. */
export interface Answer {
  readonly group: string;
  readonly arrive: Arrival;
  readonly arrives: boolean;
  readonly reached: Reached;
  /** With which it would arrive; nothing when no programme that is looked for would do. */
  readonly instead?: Instead;
  /** An easier goal that it does reach as everything is. */
  readonly lower?: Arrival;
  /** Even the longest session that can be written is too short for this distance. */
  readonly tooFar?: true;
}

/** Longer programmes than this are not looked for. */
const WEEKS_LOOKED_FOR = 26;

function reachedOf(wish: Wish, group: WishGroup, climb: Climb): Reached {
  const need = needOf(group.arrive, wish.goal.distanceM);
  const { reached } = climb;
  const halves = (code: Reached['code'], has: Half, needs: Half): Reached => ({
    code,
    reached: msOfHalf(has),
    needed: msOfHalf(needs),
  });
  if (need.stretch > 0) return halves('run-on', reached.stretch, need.stretch);
  const share = Math.ceil(need.share * reached.main);
  if (reached.main >= need.main && reached.hard < share)
    return halves('share', reached.hard, share);
  return halves('on-feet', reached.main + 2 * BOUNDS.ends, need.main + 2 * BOUNDS.ends);
}

/** The fewest weeks with which a group arrives: ever larger steps, then halving. */
function weeksFor(wish: Wish, group: string): number | undefined {
  const does = (weeks: number): boolean => arrivesIn({ ...wish, weeks }, group);
  let [no, yes, step] = [wish.weeks - 1, wish.weeks, 1];
  while (!does(yes)) {
    if (yes === WEEKS_LOOKED_FOR) return undefined;
    no = yes;
    yes = Math.min(WEEKS_LOOKED_FOR, yes + step);
    step *= 2;
  }
  while (yes - no > 1) {
    const middle = (no + yes) >> 1;
    if (does(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

function insteadFor(wish: Wish, group: WishGroup): Instead | undefined {
  const main = neededMain(group.arrive, wish.goal.distanceM);
  const isLonger = main > longestMain(wish);
  const session = isLonger ? msOfHalf(main + 2 * BOUNDS.ends) : wish.session;
  const { pins = [], ...unpinned } = wish;
  const withPins = weeksFor({ ...wish, session }, group.id);
  const without = pins.length > 0 ? weeksFor({ ...unpinned, session }, group.id) : undefined;
  const weeks = withPins ?? without;
  if (weeks === undefined) return undefined;
  // Unpinning is asked for only where weeks and time alone would not do, or where it alone does.
  const isInTheWay = withPins === undefined || (without === wish.weeks && withPins > wish.weeks);
  const needed = isInTheWay ? (without ?? weeks) : weeks;
  if (!isLonger && !isInTheWay && needed === wish.weeks) return { alone: true };
  return {
    ...(isLonger ? { session } : {}),
    ...(needed > wish.weeks ? { weeks: needed } : {}),
    ...(isInTheWay ? { pins: true } : {}),
  };
}

/** The hardest of the easier goals that a group reaches with everything else as it is. */
function lowerFor(wish: Wish, group: WishGroup): Arrival | undefined {
  const easier = ARRIVALS.slice(0, ARRIVALS.indexOf(group.arrive)).reverse();
  return easier.find((arrive) => {
    const groups = wish.groups.map((one) => (one.id === group.id ? { ...one, arrive } : one));
    return arrivesIn({ ...wish, groups }, group.id);
  });
}

/** Whether a group arrives; where not, what it would need, or which goal it does reach. */
export function answerFor(wish: Wish, group: WishGroup, climb: Climb): Answer {
  const base = {
    group: group.id,
    arrive: group.arrive,
    arrives: climb.missing === 0,
    reached: reachedOf(wish, group, climb),
  };
  if (base.arrives) return base;
  const longest = needOf(group.arrive, wish.goal.distanceM).main + 2 * BOUNDS.ends;
  const tooFar = msOfHalf(longest) > SESSION_MAX;
  const instead = tooFar ? undefined : insteadFor(wish, group);
  const lower = lowerFor(wish, group);
  return {
    ...base,
    ...(instead === undefined ? {} : { instead }),
    ...(lower === undefined ? {} : { lower }),
    ...(tooFar ? { tooFar } : {}),
  };
}
