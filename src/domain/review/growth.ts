import { sayDuration } from '../programme/duration.ts';
import { ms, msOfSeconds } from '../units.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { largest, mostOf, type Placed, pathOf } from './outline.ts';
import type { ProgrammeWarning } from './warning.ts';

/**
 * Bands of a single run against the longest before (Frandsen 2025): up to 10 % longer, over 10 to
 * 30 %, over 30 to 100 %, over 100 %. Whole milliseconds, so that a bound itself is never rounded over.
 */
export type Band = 'as before' | 'small' | 'moderate' | 'large';

/** In which band a length is, against the longest before; both in milliseconds. */
export function bandOf(before: number, now: number): Band {
  if (now * 100 <= before * 110) return 'as before';
  if (now * 100 <= before * (100 + REVIEW_LIMITS.stretchGrowth.value)) return 'small';
  return now <= before * 2 ? 'moderate' : 'large';
}

const percentMore = (before: number, now: number): number =>
  Math.round(((now - before) / before) * 100);

/** Of some weeks by place, those that lie no further back than sessions are compared. */
export const lookBack = <T>(weeks: readonly T[], n: number): readonly T[] =>
  weeks.slice(Math.max(0, n - REVIEW_LIMITS.lookBack.value), n);

/**
 * Sessions much longer than the longest of the weeks before. The look back is longer than one
 * week, so that going on after a lighter week is no jump.
 */
function longerSessions(weeks: readonly (readonly Placed[])[]): readonly ProgrammeWarning[] {
  const { sessionGrowth, sessionFloor } = REVIEW_LIMITS;
  return weeks.flatMap((sessions, n): ProgrammeWarning[] => {
    const before = largest(lookBack(weeks, n).flat(), ({ total }) => total);
    const now = mostOf(sessions, ({ total }) => total);
    if (now === undefined || before === 0) return [];
    const { total } = now.facts;
    if (total * 100 <= before * (100 + sessionGrowth.value)) return [];
    if (total - before <= msOfSeconds(sessionFloor.value)) return [];
    const detail = {
      now: sayDuration(total),
      before: sayDuration(ms(before)),
      percent: percentMore(before, total),
    };
    return [{ code: 'session-longer', path: pathOf(now), detail }];
  });
}

/** A running stretch much longer than any in the weeks before, or the first of a group and long. */
function longerRuns(weeks: readonly (readonly Placed[])[]): readonly ProgrammeWarning[] {
  let before = 0;
  let any = false;
  return weeks.flatMap((sessions): ProgrammeWarning[] => {
    const now = mostOf(sessions, ({ stretch }) => stretch);
    if (now === undefined) return [];
    const { stretch } = now.facts;
    const [longest, isFirst] = [before, !any];
    before = Math.max(before, stretch);
    any = true;
    if (isFirst || stretch - longest <= msOfSeconds(REVIEW_LIMITS.stretchFloor.value)) return [];
    if (longest === 0)
      return [{ code: 'run-first', path: pathOf(now), detail: { now: sayDuration(stretch) } }];
    const band = bandOf(longest, stretch);
    if (band === 'as before' || band === 'small') return [];
    const detail = {
      now: sayDuration(stretch),
      before: sayDuration(ms(longest)),
      percent: percentMore(longest, stretch),
      band,
    };
    return [{ code: 'run-longer', path: pathOf(now), detail }];
  });
}

/** What grows fast from week to week in the sessions of one group. */
export const checkGrowth = (weeks: readonly (readonly Placed[])[]): readonly ProgrammeWarning[] => [
  ...longerSessions(weeks),
  ...longerRuns(weeks),
];
