import type { LogEntry } from '../log/entry.ts';
import type { Following } from '../log/following.ts';
import type { Day } from '../programme/calendar.ts';
import type { Programme, SessionPlan, Week } from '../programme/programme.ts';
import { planLength } from '../programme/totals.ts';
import { sessionsIn } from '../review/outline.ts';
import { dayIn } from './days.ts';
import { rule } from './rules.ts';

/** All that advice and "now" look at. */
export interface Situation {
  readonly programme: Programme;
  readonly following?: Following;
  /** The group that the person is in: one of the programme's, or nothing is next. */
  readonly group: string;
  /** The log of this phone in any order, other programmes included. */
  readonly entries: readonly LogEntry[];
  /** The local date where the person is, ISO 8601. */
  readonly today: string;
}

/**
 * The sessions of a group in a week, as often as it has them: one plan stands for each of the
 * week's times.
 */
export function sessionsFor(week: Week | undefined, group: string): readonly SessionPlan[] {
  if (week === undefined) return [];
  const plans = sessionsIn(week, group);
  const [only] = plans;
  if (only === undefined || plans.length > 1) return plans;
  return Array.from({ length: Math.max(1, week.timesPerWeek.max) }, () => only);
}

/** Sessions that make a week a done one: no more than the group has. */
export const enoughOf = (week: Week | undefined, group: string): number =>
  Math.min(week?.timesPerWeek.min ?? 1, Math.max(1, sessionsFor(week, group).length));

/** What of an entry decides whether it counts. */
export type Went = Pick<
  LogEntry,
  'outcome' | 'doneSeconds' | 'week' | 'session' | 'group' | 'plan'
>;

/** Seconds of the plan that an entry was of, where the programme still has it. */
function plannedSeconds(programme: Programme, entry: Went): number | undefined {
  const plan = sessionsFor(programme.weeks[entry.week - 1], entry.group.id)[entry.session - 1];
  return plan === undefined || plan.text !== entry.plan ? undefined : planLength(plan.plan) / 1000;
}

/** Whether an entry counts as one of its week: gone through to the end, or most of it. */
export function counts(programme: Programme, entry: Went): boolean {
  if (entry.outcome === 'finished') return true;
  const planned = plannedSeconds(programme, entry);
  return planned === undefined
    ? entry.doneSeconds >= rule('countsAnyway')
    : entry.doneSeconds * 100 >= planned * rule('counts');
}

/** Whether it was cut short; where the plan is not known, ending early is taken at its word. */
export function isCutShort(programme: Programme, entry: Went): boolean {
  if (entry.outcome === 'finished') return false;
  const planned = plannedSeconds(programme, entry);
  return planned === undefined || entry.doneSeconds * 100 < planned * rule('cutShort');
}

/** An entry with its day. */
export interface Done {
  readonly day: Day;
  readonly entry: LogEntry;
}

/** Entries of the same moment by id, so that no order of the log matters. */
const byTime = (a: LogEntry, b: LogEntry): number =>
  a.startedAt - b.startedAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

const known = new WeakMap<readonly LogEntry[], readonly Done[]>();

/** The log in order of UTC, each entry with its local day; the same log is put in order once. */
export function inOrder(entries: readonly LogEntry[]): readonly Done[] {
  const found = known.get(entries);
  if (found !== undefined) return found;
  const made = [...entries].sort(byTime).flatMap((entry): Done[] => {
    const day = dayIn(entry.localDate);
    return day === undefined ? [] : [{ day, entry }];
  });
  known.set(entries, made);
  return made;
}

/** Entries of a stretch of days, in order; both ends included. */
export const between = (entries: readonly LogEntry[], from: Day, until: Day): readonly Done[] =>
  inOrder(entries).filter(({ day }) => day >= from && day <= until);
