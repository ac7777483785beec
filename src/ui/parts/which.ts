import type { Choice } from '../../app/session-contract.ts';
import type { Which } from '../../domain/log/by-hand.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { sessionsOf, timelineOf } from './plans.ts';

/** A session as a log entry keeps it, or nothing when the programme has none there. */
export function whichOf(
  programmes: readonly Programme[],
  { programmeId, groupId, week, session }: Choice,
): Which | undefined {
  const programme = programmes.find(({ id }) => id === programmeId);
  const group = programme?.groups.find(({ id }) => id === groupId);
  const found = programme?.weeks[week - 1];
  const plan = programme && group && sessionsOf(programme, group.id, week)[session - 1];
  if (programme === undefined || group === undefined || found === undefined || plan === undefined)
    return undefined;
  return {
    programme: { id: programme.id, revision: programme.revision, title: programme.title },
    group: { id: group.id, name: group.name },
    week,
    session,
    plan: plan.text,
    target: found.effort,
    planSeconds: timelineOf(plan.plan).total / 1000,
  };
}
