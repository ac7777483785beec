import { leadTimeline } from '../../domain/lead/lead-timeline.ts';
import { localDate } from '../../domain/log/local-date.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import type { About } from '../../domain/session/session.ts';
import { layOut } from '../../domain/timeline/lay-out.ts';
import type { Timeline } from '../../domain/timeline/timeline.ts';
import type { Clock } from '../ports.ts';
import type { Choice, Led } from '../session-contract.ts';

type Stamp = 'id' | 'startedAt' | 'offsetMinutes' | 'zone' | 'localDate';

/** A session that was chosen and has not begun. */
export interface Draft {
  readonly about: Omit<About, Stamp>;
  readonly timeline: Timeline;
  readonly reminders: readonly string[];
}

/**
 * The session that a choice means; one plan stands for all of a week's times.
 *
 * @returns nothing when the programme, the group or the week is not there (any more)
 */
export function draftOf(programmes: readonly Programme[], choice: Choice): Draft | undefined {
  const programme = programmes.find(({ id }) => id === choice.programmeId);
  const group = programme?.groups.find(({ id }) => id === choice.groupId);
  const week = programme?.weeks[choice.week - 1];
  const plans = week?.sessions[choice.groupId];
  const plan = plans?.[choice.session - 1] ?? plans?.[0];
  if (!programme || !group || !week || !plan) return undefined;
  const { id, revision, title, reminders } = programme;
  const about: Draft['about'] = {
    purpose: 'session',
    programme: { id, revision, title },
    group: { id: group.id, name: group.name },
    week: choice.week,
    session: choice.session,
    plan: plan.text,
    target: week.effort,
  };
  return { about, timeline: layOut(plan.plan), reminders };
}

/** What is led is everybody's: it belongs to a programme and to no group of it. */
export const leadDraft = ({ programme, choice, plan }: Led): Draft => ({
  about: {
    purpose: 'lead',
    programme: { ...programme, revision: 0 },
    group: { id: '', name: '' },
    week: choice.week,
    session: choice.session,
    plan: '',
    target: 0,
  },
  timeline: leadTimeline(plan),
  reminders: [],
});

/** The pocket check belongs to no programme. */
export const pocketDraft = (timeline: Timeline): Draft => ({
  about: {
    purpose: 'pocket-check',
    programme: { id: '', revision: 0, title: '' },
    group: { id: '', name: '' },
    week: 1,
    session: 1,
    plan: '',
    target: 0,
  },
  timeline,
  reminders: [],
});

/**
 * The same with its id, and with the time and place at which it begins.
 *
 * @param startedAt UTC milliseconds
 */
export function stamp(
  about: Draft['about'],
  id: string,
  clock: Clock,
  startedAt = clock.now(),
): About {
  const { offsetMinutes, zone } = clock.zoneTime(startedAt);
  const date = localDate(startedAt, offsetMinutes);
  return { ...about, id, startedAt, offsetMinutes, zone, localDate: date };
}

/** The choice that a session was started from. */
export const choiceOf = (about: About): Choice => ({
  programmeId: about.programme.id,
  groupId: about.group.id,
  week: about.week,
  session: about.session,
});
