import type { Decision } from '../log/following.ts';
import { type Day, mondayOf } from '../programme/calendar.ts';
import { wasAway } from './away.ts';
import { dayIn } from './days.ts';
import type { Done, Situation } from './situation.ts';

/** From the week of this Monday on, weeks of the programme follow each other from `week`. */
export interface Base {
  readonly monday: Day;
  readonly week: number;
  readonly why: 'start' | 'entry' | 'decision' | 're-entry';
  /** Sessions from here on are those of this time through the weeks. */
  readonly from: Day;
}

/** The programme's week (from 1, and on past its end) in the week of a Monday, by some bases. */
export function weekAt(bases: readonly Base[], monday: Day): number | undefined {
  const base = bases.findLast((each) => each.monday <= monday);
  return base === undefined ? undefined : base.week + Math.round((monday - base.monday) / 7);
}

/**
 * Decisions and sessions, in order of their days. After days away, and at the very first, the
 * session that a person takes says which week is theirs when it lies behind the calendar's.
 */
export function basesOf(
  start: Base | undefined,
  decisions: readonly (Decision & { day: Day })[],
  done: readonly Done[],
  { following }: Situation,
): Base[] {
  const bases = start === undefined ? [] : [start];
  let [lastDay, d]: [Day | undefined, number] = [undefined, 0];
  const decideUntil = (day: Day): void => {
    for (; d < decisions.length && (decisions[d]?.day ?? 0) <= day; d += 1) {
      const { day: from, week, why } = decisions[d] as Decision & { day: Day };
      const monday = mondayOf(from);
      // Another group in the same week keeps what was done of it; a repeated week begins anew.
      const isSame = why !== 'repeat' && weekAt(bases, monday) === week;
      if (!isSame) bases.push({ monday, week, why: 'decision', from });
      lastDay = from;
    }
  };
  for (const { day, entry } of done) {
    decideUntil(day);
    const isBack = lastDay === undefined || wasAway(following?.pauses ?? [], lastDay, day);
    const here = weekAt(bases, mondayOf(day));
    if (isBack && here !== undefined && entry.week < here)
      bases.push({ monday: mondayOf(day), week: entry.week, why: 'entry', from: day });
    lastDay = day;
  }
  decideUntil(Number.POSITIVE_INFINITY);
  return bases;
}

/** Week 1: the person's own Monday, the leader's, or that of their first session. */
export function startOf(
  { programme, following }: Situation,
  done: readonly Done[],
): Base | undefined {
  const own = dayIn(following?.startedOn);
  const first = done[0];
  const day = own ?? dayIn(programme.startDate) ?? first?.day;
  if (day === undefined) return undefined;
  const monday = mondayOf(day);
  return { monday, week: 1, why: 'start', from: Math.min(monday, first?.day ?? monday) };
}
