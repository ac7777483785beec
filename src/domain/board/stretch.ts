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

/** A session that is asked about for one of these already is not stretched. */
const GROWTH: readonly WarningCode[] = ['session-longer', 'run-longer', 'run-first', 'step-jump'];

const keyOf = ({ code, path }: ProgrammeWarning): string => `${code} ${path}`;

const reviewed = new WeakMap<Outline, ReadonlySet<string>>();

/** What a review finds in an outline; the same outline is looked through once. */
function foundIn(outline: Outline): ReadonlySet<string> {
  const known = reviewed.get(outline);
  if (known !== undefined) return known;
  const made = new Set(reviewOutline(outline).map(keyOf));
  reviewed.set(outline, made);
  return made;
}

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

/** What a review finds in an outline and did not find in the one before. */
export function newIn(before: Outline, after: Outline): readonly ProgrammeWarning[] {
  const known = foundIn(before);
  return reviewOutline(after).filter((warning) => !known.has(keyOf(warning)));
}

/** Whether it stands within the limits of the review: nothing new anywhere, no growth asked about here. */
function isWithin(before: Outline, after: Outline, at: SessionAt): boolean {
  const week = after.weeks[at.week];
  const count = week === undefined ? 0 : sessionsIn(week, at.group).length;
  const path = pathOf({ ...at, count });
  const asked = GROWTH.some((code) => foundIn(before).has(keyOf({ code, path })));
  return !asked && newIn(before, after).length === 0;
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
