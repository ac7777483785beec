import { rule } from '../advice/rules.ts';
import type { Went } from '../advice/situation.ts';
import type { Feeling, LogEntry } from '../log/entry.ts';
import type { Programme } from '../programme/programme.ts';
import type { HeardEntry } from './heard.ts';
import { boardLimit } from './limits.ts';
import { type PlanRef, planRef, plansOf } from './plan-ref.ts';
import type { There } from './there.ts';

const ANYWAY = rule('countsAnyway');
const NEAR_END = boardLimit('finished');

/**
 * How a session went, from what was told: a response does not say how it ended. It is finished
 * when all but the last seconds of the plan were gone through; where the plan is not known, when
 * it was as long as counts for the person's own week.
 */
export function wentOf(told: HeardEntry, plan: PlanRef | undefined): Went {
  const { doneSeconds, week, session, group } = told;
  const isFinished =
    plan === undefined ? doneSeconds >= ANYWAY : doneSeconds >= plan.seconds - NEAR_END;
  return {
    outcome: isFinished ? 'finished' : 'ended-early',
    doneSeconds,
    week,
    session,
    group: { id: group, name: group },
    plan: plan?.text ?? '',
  };
}

/**
 * A session that only the leader's list knows of. It counts, and nobody said that it was gone
 * through to the end: it is no proof of a long run.
 */
export function thereWent(
  { week, session }: There,
  group: string,
  plan: PlanRef | undefined,
): Went {
  return {
    outcome: 'ended-early',
    doneSeconds: plan?.seconds ?? ANYWAY,
    week,
    session,
    group: { id: group, name: group },
    plan: plan?.text ?? '',
  };
}

/** Day of the leader's list at noon: nobody wrote the time down. */
export const noonOf = (date: string): number => Date.parse(`${date}T12:00:00Z`);

const about = ({ id, revision, title }: Programme): LogEntry['programme'] => ({
  id,
  revision,
  title,
});

function feelingOf(told: HeardEntry): Feeling {
  const { effort, effortLater, niggle, warningSign, note } = told;
  return {
    ...(effort !== undefined && { effort }),
    ...(effortLater !== undefined && { effortLater }),
    ...(niggle && { niggle }),
    ...(warningSign && { warningSign }),
    ...(note !== undefined && { note }),
  };
}

/**
 * What was told as log entries, so that one engine gives advice for leader and participant alike.
 * The plan is the programme's as it stands: weeks that are over keep theirs from revision to
 * revision.
 */
export function logOf(
  { entries }: { readonly entries: readonly HeardEntry[] },
  programme: Programme,
): readonly LogEntry[] {
  const plans = plansOf(programme);
  const of = about(programme);
  return entries.map(
    (told): LogEntry => ({
      format: 'towpath-log/2',
      id: told.id,
      programme: of,
      ...wentOf(told, planRef(plans, told)),
      target: told.target,
      startedAt: told.startedAt,
      offsetMinutes: told.offsetMinutes,
      zone: told.zone,
      localDate: told.localDate,
      activeSeconds: told.activeSeconds,
      covered: [],
      feeling: feelingOf(told),
      how: 'app',
    }),
  );
}

/** A session that only the leader's list knows of, as a log entry. */
export function thereEntry(there: There, group: string, programme: Programme): LogEntry {
  const went = thereWent(there, group, planRef(plansOf(programme), { ...there, group }));
  return {
    format: 'towpath-log/2',
    id: `there.${there.date}`,
    programme: about(programme),
    ...went,
    target: programme.weeks[there.week - 1]?.effort ?? 0,
    startedAt: noonOf(there.date),
    offsetMinutes: 0,
    zone: 'UTC',
    localDate: there.date,
    activeSeconds: went.doneSeconds,
    covered: [],
    feeling: {},
    how: 'there',
  };
}
