import { rule } from '../advice/rules.ts';
import type { Feeling, LogEntry } from '../log/entry.ts';
import type { Programme } from '../programme/programme.ts';
import type { HeardEntry } from './heard.ts';
import { boardLimit } from './limits.ts';
import { type PlanRef, planRef } from './plan-ref.ts';
import type { There } from './there.ts';

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

/** Where the plan is not known, so much was a session as it is for the person's own week. */
function isFinished({ doneSeconds }: HeardEntry, plan: PlanRef | undefined): boolean {
  return plan === undefined
    ? doneSeconds >= rule('countsAnyway')
    : doneSeconds >= plan.seconds - boardLimit('finished');
}

interface Place {
  readonly group: string;
  readonly week: number;
  readonly session: number;
}

const of = (programme: Programme, { group, week, session }: Place, text = '') => ({
  format: 'towpath-log/2' as const,
  programme: { id: programme.id, revision: programme.revision, title: programme.title },
  group: { id: group, name: programme.groups.find(({ id }) => id === group)?.name ?? group },
  week,
  session,
  plan: text,
});

/**
 * What was told as log entries, so that one engine counts sessions and gives advice for leader and
 * participant alike. A response does not say how a session ended: it is finished when all but the
 * last seconds of the plan were gone through. The plan is the programme's as it stands: weeks that
 * are over keep theirs from revision to revision.
 */
export const logOf = (
  { entries }: { readonly entries: readonly HeardEntry[] },
  programme: Programme,
): readonly LogEntry[] =>
  entries.map((told): LogEntry => {
    const plan = planRef(programme, told);
    return {
      ...of(programme, told, plan?.text),
      id: told.id,
      target: told.target,
      startedAt: told.startedAt,
      offsetMinutes: told.offsetMinutes,
      zone: told.zone,
      localDate: told.localDate,
      outcome: isFinished(told, plan) ? 'finished' : 'ended-early',
      doneSeconds: told.doneSeconds,
      activeSeconds: told.activeSeconds,
      covered: [],
      feeling: feelingOf(told),
      how: 'app',
    };
  });

/**
 * A session that only the leader's list knows of. It counts, and nobody said that it was gone
 * through to the end: it is no proof of a long run.
 */
export function thereEntry(there: There, group: string, programme: Programme): LogEntry {
  const place = { ...there, group };
  const plan = planRef(programme, place);
  const seconds = plan?.seconds ?? rule('countsAnyway');
  return {
    ...of(programme, place, plan?.text),
    id: `there.${there.date}`,
    target: programme.weeks[there.week - 1]?.effort ?? 0,
    startedAt: Date.parse(`${there.date}T12:00:00Z`),
    offsetMinutes: 0,
    zone: 'UTC',
    localDate: there.date,
    outcome: 'ended-early',
    doneSeconds: seconds,
    activeSeconds: seconds,
    covered: [],
    feeling: {},
    how: 'there',
  };
}
