import type { Ms } from '../units.ts';
import { BOUNDS, type Half, halfOf } from './bounds.ts';
import type { Arrival, WishGroup } from './wish.ts';

/**
 * Seconds per kilometre at the event. Walking: 3.5 mph, which the Compendium of Physical Activities
 * (Ainsworth 2011, code 17200) calls brisk; 1 mile is 1.609344 km. Running: 8:00 per km, an easy
 * pace for a first event (common practice, no source). Mix: half of the time each.
 */
export const PACE_S_PER_KM: Readonly<Record<Arrival, number>> = {
  walk: 3600 / (3.5 * 1.609344),
  run: 480,
  mix: 7200 / (3.5 * 1.609344 + 7.5),
};

/**
 * How much of the event a session should have had before it: three quarters. The event is then one
 * step more of at most a third, as between weeks (common practice, no source).
 */
const BEFORE = 3 / 4;

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
  const seconds = BEFORE * PACE_S_PER_KM[arrive] * (distanceM / 1000);
  const halves = Math.ceil(Math.round(seconds * 1000) / 30_000);
  if (arrive === 'run') return { main: halves, stretch: halves, share: 0 };
  return { main: halves - 2 * BOUNDS.ends, stretch: 0, share: arrive === 'mix' ? 1 / 2 : 3 / 4 };
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
