import { feltOf, type RatingWay } from '../back/session.ts';
import type { LogEntry } from '../log/entry.ts';
import type { Course } from './course.ts';
import { type Finding, finding } from './finding.ts';
import { rule } from './rules.ts';
import { between, isCutShort, type Situation } from './situation.ts';

/** The latest sessions in the person's group since their last decision, oldest first. */
function latest(
  { programme, entries, group }: Situation,
  { today, lastDecision }: Course,
  which: (entry: LogEntry) => boolean,
): readonly LogEntry[] {
  // What was done on the day of a decision is mostly what led to it.
  const decided = lastDecision === undefined ? Number.NEGATIVE_INFINITY : lastDecision.day + 1;
  const from = Math.max(today - rule('lookBack'), decided);
  return between(entries, from, today)
    .map(({ entry }) => entry)
    .filter(
      (entry) => entry.programme.id === programme.id && entry.group.id === group && which(entry),
    )
    .slice(-rule('latest'));
}

/** Points above the target; below 0 when it felt easier. */
const gapOf = (entry: LogEntry, rating: RatingWay): number =>
  (feltOf(entry, rating) ?? entry.target / 10) - entry.target / 10;

/** Sums of tenths, so that 3.5 + 2 is not missed by a rounding. */
const isAtLeast = (gap: number, points: number): boolean => Math.round(gap * 10) >= points * 10;

/** Sessions that felt harder than meant, or were cut short, more often than once. */
export function harderFindings(
  situation: Situation,
  course: Course,
  rating: RatingWay,
): readonly Finding[] {
  const rated = latest(situation, course, (entry) => feltOf(entry, rating) !== undefined);
  const all = latest(situation, course, () => true);
  const gaps = rated.map((entry) => gapOf(entry, rating));
  const above = (points: number): number => gaps.filter((gap) => isAtLeast(gap, points)).length;
  const cut = all.filter((entry) => isCutShort(situation.programme, entry)).length;
  const wasRepeated = course.lastDecision?.why === 'repeat';
  const found: Finding[] = [];
  const [much, harder] = [above(rule('muchHarder')), above(rule('harder'))];
  if (much >= rule('agree'))
    found.push(
      finding('much-harder', { times: much, of: gaps.length, points: rule('muchHarder') }),
    );
  if (harder >= rule('agree')) {
    const detail = { times: harder, of: gaps.length, points: rule('harder') };
    found.push(finding(wasRepeated ? 'still-harder' : 'harder', detail));
  }
  if (cut >= rule('agree'))
    found.push(
      finding(wasRepeated ? 'still-cut-short' : 'cut-short', { times: cut, of: all.length }),
    );
  if (harder > 0 && harder < rule('agree'))
    found.push(finding('one-harder', { points: rule('harder') }));
  return found;
}

/**
 * Whether the latest sessions say that more would be right: enough of them, none cut short, none
 * above its target, and more than one clearly below.
 */
export function easierTimes(
  situation: Situation,
  course: Course,
  rating: RatingWay,
): { readonly times: number; readonly of: number } | undefined {
  const all = latest(situation, course, () => true);
  const rated = all.filter((entry) => feltOf(entry, rating) !== undefined);
  if (rated.length < rule('latest')) return undefined;
  if (all.some((entry) => isCutShort(situation.programme, entry))) return undefined;
  const gaps = rated.map((entry) => gapOf(entry, rating));
  const times = gaps.filter((gap) => isAtLeast(-gap, rule('harder'))).length;
  if (times < rule('agree') || gaps.some((gap) => gap > 0)) return undefined;
  return { times, of: gaps.length };
}

/** How many of the latest sessions were rated. */
export const ratedCount = (situation: Situation, course: Course, rating: RatingWay): number =>
  latest(situation, course, (entry) => feltOf(entry, rating) !== undefined).length;
