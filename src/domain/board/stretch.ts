import { formatPlan } from '../programme/format.ts';
import type { Plan } from '../programme/plan.ts';
import type { SessionPlan } from '../programme/programme.ts';
import { factsOf } from '../review/facts.ts';
import { type Outline, pathOf, sessionsIn } from '../review/outline.ts';
import { reviewOutline } from '../review/review.ts';
import type { ProgrammeWarning, WarningCode } from '../review/warning.ts';
import { candidatesOf } from './candidates.ts';

/** One session of a programme or of what can be read of a sheet; counted from 0. */
export interface SessionAt {
  readonly week: number;
  readonly group: string;
  readonly session: number;
}

/** What a session must not be asked about at all once it was stretched. */
const GROWTH: ReadonlySet<WarningCode> = new Set([
  'session-longer',
  'run-longer',
  'run-first',
  'step-jump',
]);

const keyOf = ({ code, path }: ProgrammeWarning): string => `${code} ${path}`;

/** The outline with another plan in a place; everything else the same objects. */
export function withPlan(
  outline: Outline,
  { week, group, session }: SessionAt,
  plan: Plan,
): Outline {
  const before = outline.weeks[week];
  if (before === undefined) return outline;
  const list = sessionsIn(before, group);
  const next: SessionPlan = { text: formatPlan(plan), plan };
  const sessions = { ...before.sessions, [group]: list.with(session, next) };
  return { ...outline, weeks: outline.weeks.with(week, { ...before, sessions }) };
}

/** Whether a review of the outline finds nothing that it did not find before. */
export function findsNothingNew(before: Outline, after: Outline): boolean {
  const known = new Set(reviewOutline(before).map(keyOf));
  return reviewOutline(after).every((warning) => known.has(keyOf(warning)));
}

/** Whether it stands within the limits of the review: nothing new anywhere, no growth asked about here. */
function isWithin(before: Outline, after: Outline, at: SessionAt): boolean {
  const week = after.weeks[at.week];
  const count = week === undefined ? 0 : sessionsIn(week, at.group).length;
  const path = pathOf({ ...at, count });
  return (
    findsNothingNew(before, after) &&
    reviewOutline(after).every(({ code, path: where }) => where !== path || !GROWTH.has(code))
  );
}

/**
 * A session with one step more: a set, harder steps longer, or harder steps longer and the others
 * as much shorter. The first of them that a review of the programme has nothing to ask about.
 *
 * @returns nothing where none is
 */
export function stretchedAt(outline: Outline, at: SessionAt): Plan | undefined {
  const week = outline.weeks[at.week];
  const plan = week && sessionsIn(week, at.group)[at.session]?.plan;
  if (plan === undefined) return undefined;
  return candidatesOf(plan, 1).find(
    (next) =>
      factsOf(next).work > factsOf(plan).work && isWithin(outline, withPlan(outline, at, next), at),
  );
}

/** Whether any session of a group's week (from 1) can be stretched. */
export function mayStretch(outline: Outline, group: string, week: number): boolean {
  const written = outline.weeks[week - 1];
  const sessions = written === undefined ? [] : sessionsIn(written, group);
  return sessions.some((_, session) => stretchedAt(outline, { week: week - 1, group, session }));
}
