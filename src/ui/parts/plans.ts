/** Plans as the screens need them: laid out once, found by group, week and session. */
import type { Plan } from '../../domain/programme/plan.ts';
import type { Programme, SessionPlan } from '../../domain/programme/programme.ts';
import { layOut } from '../../domain/timeline/lay-out.ts';
import type { Timeline } from '../../domain/timeline/timeline.ts';
import { type Ms, ms } from '../../domain/units.ts';

const laidOut = new WeakMap<Plan, Timeline>();

/** The timeline of a plan. The same plan gives the same object, so that strips stay drawn. */
export function timelineOf(plan: Plan): Timeline {
  const known = laidOut.get(plan);
  if (known !== undefined) return known;
  const made = layOut(plan);
  laidOut.set(plan, made);
  return made;
}

/** The sessions of a group in a week (from 1); one plan stands for all of the week's times. */
export function sessionsOf(
  programme: Programme,
  groupId: string,
  week: number,
): readonly SessionPlan[] {
  const found = programme.weeks[week - 1];
  const plans = found?.sessions[groupId] ?? [];
  const [only] = plans;
  if (found === undefined || only === undefined || plans.length > 1) return plans;
  return Array.from({ length: Math.max(1, found.timesPerWeek.max) }, () => only);
}

const longest = new WeakMap<Programme, Map<string, Ms>>();

/** Length of a group's longest session: strips of one programme share its measure. */
export function longestSession(programme: Programme, groupId: string): Ms {
  const known = longest.get(programme) ?? new Map<string, Ms>();
  longest.set(programme, known);
  const found = known.get(groupId);
  if (found !== undefined) return found;
  const totals = programme.weeks.flatMap((week) =>
    (week.sessions[groupId] ?? []).map((session) => timelineOf(session.plan).total),
  );
  const made = ms(Math.max(1, ...totals));
  known.set(groupId, made);
  return made;
}

/** True when every session of the week is the same plan. */
export const allSame = (sessions: readonly SessionPlan[]): boolean =>
  sessions.every((session) => session.text === sessions[0]?.text);
