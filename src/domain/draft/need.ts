import { REVIEW_LIMITS } from '../review/limits.ts';
import type { Ms } from '../units.ts';
import { BOUNDS, type Half, halfOf } from './bounds.ts';
import type { Arrival, WishGroup } from './wish.ts';

/**
 * How much of the event one run has been before it: three quarters (common practice, no source).
 * Walkers and mixed groups are asked what the review asks of them, at the paces assumed there.
 */
const RUN_BEFORE = 3 / 4;
/** How much of a main set is running in a mixed group, and brisk in one that walks. */
const SHARE: Readonly<Record<Arrival, number>> = { walk: 3 / 4, mix: 1 / 2, run: 0 };

const {
  runningPace: { value: runPace },
  walkingPace: { value: walkPace },
  eventGrowth,
  eventGrowthWalking,
} = REVIEW_LIMITS;

/** Seconds of main set after which a group is near enough to the event. */
function mainSeconds(arrive: Arrival, km: number): number {
  if (arrive === 'run') return RUN_BEFORE * km * runPace;
  const ends = 2 * BOUNDS.ends * 30;
  if (arrive === 'walk') return (km * walkPace) / (1 + eventGrowthWalking.value / 100) - ends;
  const kmPerSecond = SHARE.mix / runPace + (1 - SHARE.mix) / walkPace;
  return (km / (1 + eventGrowth.value / 100) - ends / walkPace) / kmPerSecond;
}

/** What a group has to have done by its last full week. */
export interface Need {
  /** Main set. */
  readonly main: Half;
  /** One run without a walk; 0 where none is asked for. */
  readonly stretch: Half;
  /** Part of the main set that is running, or brisk walking for those who walk. */
  readonly share: number;
}

/**
 * A walker and a mixed group are on their feet in warm-up and cool-down too; a run without a stop
 * is inside the main set.
 */
export function needOf(arrive: Arrival, distanceM: number): Need {
  // Rounded to whole milliseconds first, so that a length that fits exactly is not made longer.
  const main = Math.ceil(Math.round(mainSeconds(arrive, distanceM / 1000) * 1000) / 30_000);
  return { main, stretch: arrive === 'run' ? main : 0, share: SHARE[arrive] };
}

/** The longest stretch of a group's harder activity that is comfortable today. */
export const todayOf = (group: WishGroup): Half =>
  halfOf(group.arrive === 'walk' ? group.walk : group.run);

/** The longest that a group moves today, walking or running. */
export const onFeetToday = ({ walk, run }: { walk: Ms; run: Ms }): Half =>
  Math.max(halfOf(walk), halfOf(run));

/** What is missing, in half minutes; 0 when the group arrives. */
export const missing = (
  need: Need,
  reached: { readonly main: Half; readonly hard: Half; readonly stretch: Half },
): Half =>
  Math.max(0, need.main - reached.main) +
  Math.max(0, need.stretch - reached.stretch) +
  Math.max(0, Math.ceil(need.share * reached.main) - reached.hard);
