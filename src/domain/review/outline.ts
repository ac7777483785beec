import { pathText } from '../programme/path.ts';
import type { Programme, SessionPlan, Week } from '../programme/programme.ts';
import type { PlanFacts } from './facts.ts';
import { factsOf } from './facts.ts';

/** What a review looks at. Groups stand in order from the least to the most demanding. */
export type Outline = Pick<Programme, 'groups' | 'weeks' | 'goal' | 'startDate'>;

/** A session with its place. Weeks and sessions count from 0. */
export interface Placed {
  readonly week: number;
  readonly group: string;
  readonly session: number;
  /** Sessions of its group in its week. */
  readonly count: number;
  readonly facts: PlanFacts;
}

/** The sessions of a group in a week that can be read; a file and a sheet may have none. */
export const sessionsIn = (week: Week, group: string): readonly SessionPlan[] =>
  Object.hasOwn(week.sessions, group) ? (week.sessions[group] ?? []) : [];

/** Where a session stands, as in the file: a lone one has no number. */
export const pathOf = ({ week, group, session, count }: Omit<Placed, 'facts'>): string =>
  pathText(['weeks', week, 'sessions', group, ...(count > 1 ? [session] : [])]);

/** All sessions of a group, by week. */
export const placedOf = (outline: Outline, group: string): readonly (readonly Placed[])[] =>
  outline.weeks.map((week, n) => {
    const list = sessionsIn(week, group);
    return list.map(({ plan }, session) => ({
      week: n,
      group,
      session,
      count: list.length,
      facts: factsOf(plan),
    }));
  });

/** The session in which a measure is largest; of several, the first. */
export function mostOf(
  sessions: readonly Placed[],
  measure: (facts: PlanFacts) => number,
): Placed | undefined {
  let most: Placed | undefined;
  for (const session of sessions)
    if (most === undefined || measure(session.facts) > measure(most.facts)) most = session;
  return most;
}

/** The largest value of a measure; 0 without sessions. */
export const largest = (
  sessions: readonly Placed[],
  measure: (facts: PlanFacts) => number,
): number => sessions.reduce((most, { facts }) => Math.max(most, measure(facts)), 0);
