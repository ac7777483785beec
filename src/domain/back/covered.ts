import type { LogEntry } from '../log/entry.ts';
import { type Interval, merge } from '../session/credit.ts';
import { type Ms, ms, msOfSeconds } from '../units.ts';
import type { Laid, Stretch } from './laid.ts';

/**
 * What the minutes of a session rest on. `covered`: the stretches that were gone through.
 * `as-told`: those that were written down afterwards. `whole-plan`: written down as done whole.
 * `shared-out`: so many minutes were written down, and they are shared out as the plan shares its
 * own. `not-known`: the plan cannot be read.
 */
export type Basis = 'covered' | 'as-told' | 'whole-plan' | 'shared-out' | 'not-known';

/** What of a plan was gone through, and how that is known. */
export interface Gone {
  readonly basis: Basis;
  readonly stretches: readonly Stretch[];
}

/** The parts of a plan that lie within intervals; both in order, the intervals merged. */
function within(laid: Laid, intervals: readonly Interval[]): readonly Stretch[] {
  const found: Stretch[] = [];
  let at = 0;
  for (const stretch of laid.stretches) {
    while ((intervals[at]?.[1] ?? Infinity) <= stretch.from) at += 1;
    for (let n = at; n < intervals.length; n += 1) {
      const [start, end] = intervals[n] as Interval;
      if (start >= stretch.to) break;
      const [from, to] = [Math.max(start, stretch.from), Math.min(end, stretch.to)];
      found.push({ ...stretch, from: ms(from), to: ms(to) });
    }
  }
  return found;
}

/** A plan drawn out or pressed together to a length. Ends are rounded, so that the sum is exact. */
function drawnTo(laid: Laid, length: Ms): readonly Stretch[] {
  const at = (place: Ms): Ms => ms((place * length) / laid.total);
  return laid.stretches.map((each) => ({ ...each, from: at(each.from), to: at(each.to) }));
}

/**
 * What was gone through of a plan. A session that Towpath led says so itself, and where all its
 * stretches were too short to be told in seconds it was nothing. One that was written down afterwards
 * may have no stretches: then its minutes are shared out over the plan in the plan's own
 * proportions, or, with no minutes either, it was the whole plan when it was done to the end.
 *
 * @param laid the entry's plan, or nothing where it cannot be read
 */
export function goneThrough(entry: LogEntry, laid: Laid | undefined): Gone {
  if (laid === undefined) return { basis: 'not-known', stretches: [] };
  if (entry.how === 'app' || entry.covered.length > 0) {
    const covered = entry.covered.map(
      ([from, to]): Interval => [msOfSeconds(from), msOfSeconds(to)],
    );
    const basis = entry.how === 'app' ? 'covered' : 'as-told';
    return { basis, stretches: within(laid, merge(covered)) };
  }
  const done = msOfSeconds(Math.max(0, entry.doneSeconds));
  const whole = done === 0 && entry.outcome === 'finished';
  if (whole || done === laid.total) return { basis: 'whole-plan', stretches: laid.stretches };
  return done === 0
    ? { basis: 'as-told', stretches: [] }
    : { basis: 'shared-out', stretches: drawnTo(laid, done) };
}
