import type { LogEntry } from '../log/entry.ts';
import { isRunning } from '../programme/plan.ts';
import { type Ms, ms, msOfSeconds } from '../units.ts';
import { type Basis, type Gone, goneThrough } from './covered.ts';
import { ENERGY, intensityOf } from './intensity.ts';
import { type Laid, longestRunOf, type Stretch } from './laid.ts';

/** Which of the two ratings counts. It stays the same for all sessions of a person. */
export type RatingWay = 'at-the-end' | 'later';

/** What can be added up over sessions. */
export interface Sums {
  readonly walk: Ms;
  /** Jog and faster. */
  readonly run: Ms;
  /** Standing and stretching. */
  readonly still: Ms;
  /** Moved beyond the plan: extra minutes and stretches done again. Not told apart by activity. */
  readonly extra: Ms;
  /** Of walk, run and still, by the energy that they take. */
  readonly moderate: Ms;
  readonly vigorous: Ms;
  /** Rating times milliseconds moved, over the sessions with a rating. `loadOf` makes it readable. */
  readonly load: number;
  /** Sessions, and how many of them have a rating. */
  readonly sessions: number;
  readonly rated: number;
}

/** One session as it is looked back on. */
export interface SessionBack extends Sums {
  readonly entry: LogEntry;
  readonly basis: Basis;
  /** Milliseconds moved, as load counts them. */
  readonly moved: Ms;
  /** 0 to 10. */
  readonly felt?: number;
  /** 0 to 10. */
  readonly target: number;
  /** Longest running with no walk in it; nothing where it cannot be known. Holds are not seen. */
  readonly longestRun?: Ms;
}

/**
 * Towpath's own measure of what sessions ask: how hard it felt, from 0 to 10, times minutes moved.
 * It is on our own scale of effort and compares only with the same person's other weeks.
 *
 * @param load rating times milliseconds
 */
export const loadOf = (load: number): number => load / 60_000;

/** The rating that counts, or nothing. One outside of the scale is none. */
export function feltOf({ feeling }: Pick<LogEntry, 'feeling'>, way: RatingWay): number | undefined {
  const rating = way === 'later' ? (feeling.effortLater ?? feeling.effort) : feeling.effort;
  return rating !== undefined && rating >= 0 && rating <= 10 ? rating : undefined;
}

type Lengths = Pick<Sums, 'walk' | 'run' | 'still' | 'moderate' | 'vigorous'>;

function lengthsOf(stretches: readonly Stretch[]): Lengths {
  let [walk, run, still, moderate, vigorous] = [0, 0, 0, 0, 0];
  for (const { from, to, activity } of stretches) {
    const length = to - from;
    if (isRunning(activity)) run += length;
    else if (activity.endsWith('walk')) walk += length;
    else still += length;
    const intensity = intensityOf(ENERGY[activity].met);
    if (intensity === 'moderate') moderate += length;
    else if (intensity === 'vigorous') vigorous += length;
  }
  return {
    walk: ms(walk),
    run: ms(run),
    still: ms(still),
    moderate: ms(moderate),
    vigorous: ms(vigorous),
  };
}

/** Where only minutes are known, the longest run is known only when the whole plan was in them. */
function longestRun({ basis, stretches }: Gone, laid: Laid | undefined, done: Ms): Ms | undefined {
  if (laid === undefined || basis === 'not-known') return undefined;
  if (basis === 'covered' || basis === 'as-told') return longestRunOf(stretches);
  return basis === 'whole-plan' || done >= laid.total ? longestRunOf(laid.stretches) : undefined;
}

/**
 * One session in numbers.
 *
 * @param laid the session's plan, or nothing where it cannot be read: then only load is known
 */
export function sessionBack(
  entry: LogEntry,
  laid: Laid | undefined,
  way: RatingWay = 'at-the-end',
): SessionBack {
  const gone = goneThrough(entry, laid);
  const lengths = lengthsOf(gone.stretches);
  const all = lengths.walk + lengths.run + lengths.still;
  const active = msOfSeconds(Math.max(0, entry.activeSeconds));
  const moved = active === 0 && entry.how !== 'app' ? ms(all) : active;
  const felt = feltOf(entry, way);
  const longest = longestRun(gone, laid, msOfSeconds(entry.doneSeconds));
  return {
    entry,
    basis: gone.basis,
    ...lengths,
    extra: ms(Math.max(0, moved - all)),
    load: felt === undefined ? 0 : felt * moved,
    sessions: 1,
    rated: felt === undefined ? 0 : 1,
    moved,
    target: entry.target / 10,
    ...(felt === undefined ? {} : { felt }),
    ...(longest === undefined ? {} : { longestRun: longest }),
  };
}
