import { BOUNDS, type Half, longestAfter } from './bounds.ts';
import type { Need } from './need.ts';
import type { Option } from './option.ts';
import type { PinnedWeek } from './pinned.ts';
import type { Arrival } from './wish.ts';

/** A group on its way through the weeks. */
export interface Climber {
  readonly arrive: Arrival;
  /** Longest stretch that is comfortable today. */
  readonly today: Half;
  readonly need: Need;
  readonly pinned: readonly PinnedWeek[];
}

/** The most of a week or of several: what later weeks are bound by, and what is reached. */
export interface Reached {
  readonly main: number;
  readonly hard: number;
  readonly stretch: number;
}

/** What pinned sessions up to a week, itself left out, have shown. */
export const seenBefore = (pinned: readonly PinnedWeek[], week: number): Reached => ({
  main: Math.max(0, ...pinned.slice(0, week).map(({ main }) => main)),
  hard: Math.max(0, ...pinned.slice(0, week).map(({ hard }) => hard)),
  stretch: Math.max(0, ...pinned.slice(0, week).map(({ stretch }) => stretch)),
});

/** The most that may be run in a first week whose main set is `main`. */
function firstHard({ arrive, today }: Climber, main: Half): number {
  const more = today + BOUNDS.firstHard;
  return arrive === 'run' ? more : Math.min(more, Math.floor(BOUNDS.firstShare * main));
}

const firstStretch = ({ today }: Climber): Half => Math.max(BOUNDS.firstStretch, today);

/**
 * Limits of a full week's main set.
 *
 * @param before the last full week that was drafted, if there is one
 * @param seen what is pinned in the weeks before
 */
export function limitsOf(
  climber: Climber,
  main: Half,
  before: Option | undefined,
  seen: Reached,
): { readonly least: number; readonly most: number; readonly longest: number } {
  const most = Math.max(before?.hard ?? 0, seen.hard);
  const longest = Math.max(before?.stretch ?? 0, seen.stretch);
  const isFirst = before === undefined;
  return {
    least: before?.hard ?? 0,
    most: Math.max(isFirst ? firstHard(climber, main) : 0, most === 0 ? 0 : most + BOUNDS.rise),
    // What can be done today bounds the first week only: later ones go on from what was done.
    longest: Math.max(
      isFirst ? firstStretch(climber) : 0,
      longest === 0 ? 0 : longestAfter(longest),
    ),
  };
}
