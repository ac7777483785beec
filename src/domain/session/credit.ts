import { type Ms, ms } from '../units.ts';
import type { Moment } from './session.ts';

/** A stretch of plan time, start included and end excluded. */
export type Interval = readonly [Ms, Ms];

/** An unbroken stretch of moving. Only its two ends count, so that no tick's error adds up. */
interface Stretch {
  /** Whether the track's time is plan time (the session's lane) or extra (any other lane). */
  readonly counts: 'plan' | 'extra';
  readonly from: Moment;
  readonly to: Moment;
}

/** What has been gone through: closed stretches summed up, and the open one. */
export interface Credit {
  /** Plan time gone through, merged and in order. */
  readonly covered: readonly Interval[];
  /** Time moved in closed stretches, repeats counted. */
  readonly closed: Ms;
  readonly open?: Stretch;
}

/**
 * How far the sound may run ahead of the wall clock and still have been heard: a phone reports
 * its place in steps of up to a quarter of a second. More is a seek, and a seek is not exercise.
 */
export const AHEAD_MS = 1000;

/** Nothing was gone through yet. */
export const noCredit: Credit = { covered: [], closed: ms(0) };

/** Begins a stretch at a moment, after closing the one before. */
export function beginStretch(credit: Credit, counts: Stretch['counts'], at: Moment): Credit {
  return { ...endStretch(credit), open: { counts, from: at, to: at } };
}

/**
 * Carries the open stretch on to a moment. A move that the wall clock does not allow, or one
 * backwards, ends it where it was and begins another at the new place.
 */
export function goOnTo(credit: Credit, at: Moment): Credit {
  const { open } = credit;
  if (open === undefined) return credit;
  const steady =
    isSteady(open.to, at) && at.track - open.from.track <= at.wall - open.from.wall + AHEAD_MS;
  if (!steady) return beginStretch(credit, open.counts, at);
  return { ...credit, open: { ...open, to: at } };
}

/** Closes the open stretch where it was last seen. */
export function endStretch(credit: Credit): Credit {
  const { open } = credit;
  if (open === undefined) return credit;
  const length = lengthOf(open);
  return {
    covered: open.counts === 'plan' ? merge([...credit.covered, heard(open)]) : credit.covered,
    closed: ms(credit.closed + length),
  };
}

/** Whether the track moved forward no faster than the wall clock. */
export const isSteady = (from: Moment, to: Moment): boolean =>
  to.track >= from.track &&
  to.wall >= from.wall &&
  to.track - from.track <= to.wall - from.wall + AHEAD_MS;

/** Never more than the wall clock of the stretch. */
const lengthOf = ({ from, to }: Stretch): Ms =>
  ms(Math.max(0, Math.min(to.track - from.track, to.wall - from.wall)));

const heard = (stretch: Stretch): Interval => [
  stretch.from.track,
  ms(stretch.from.track + lengthOf(stretch)),
];

/** Plan time gone through, each part of it once, merged and in order. */
export const coveredOf = (credit: Credit): readonly Interval[] => endStretch(credit).covered;

/** How much of the plan was gone through, each part of it counted once. */
export const doneMs = (credit: Credit): Ms =>
  ms(coveredOf(credit).reduce((sum, [from, to]) => sum + to - from, 0));

/** Time moved: repeats and extra minutes counted, holds, gaps and interruptions left out. */
export const activeMs = (credit: Credit): Ms => endStretch(credit).closed;

/** Intervals in order, those that meet or overlap made one, empty ones left out. */
export function merge(intervals: readonly Interval[]): readonly Interval[] {
  const sorted = intervals.filter(([from, to]) => to > from).sort((a, b) => a[0] - b[0]);
  const merged: Interval[] = [];
  for (const [from, to] of sorted) {
    const last = merged.at(-1);
    if (last === undefined || from > last[1]) merged.push([from, to]);
    else if (to > last[1]) merged[merged.length - 1] = [last[0], to];
  }
  return merged;
}
