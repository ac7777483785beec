/** A fictional member of the club on the salt marsh, and what they did. */
import demo from '../../../src/app/demo/heron-loop.json' with { type: 'json' };
import { nowOf } from '../../../src/domain/advice/now.ts';
import type { Situation } from '../../../src/domain/advice/situation.ts';
import { sessionsFor } from '../../../src/domain/advice/situation.ts';
import type { Feeling, LogEntry } from '../../../src/domain/log/entry.ts';
import type { Decision, Following, Pause } from '../../../src/domain/log/following.ts';
import type { Programme } from '../../../src/domain/programme/programme.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';

function read(file: unknown): Programme {
  const programme = readProgramme(JSON.stringify(file));
  if (!programme.ok) throw new Error(JSON.stringify(programme.error));
  return programme.value;
}

/** Six weeks to the Heron Loop, from Monday 1 March 2027; the Loop is on Sunday 11 April. */
export const HERON = read(demo);

/** The same without any date. */
export const UNDATED: Programme = (() => {
  const { startDate: _, goal, ...rest } = HERON;
  return { ...rest, goal: { name: goal.name, distanceM: goal.distanceM } };
})();

/** ISO date of a day of a week of the Heron Loop; both from 1, Monday first. */
export const on = (week: number, weekday: number): string =>
  new Date(Date.UTC(2027, 1, 22 + week * 7 + weekday - 1)).toISOString().slice(0, 10);

export interface Did {
  readonly date: string;
  readonly week: number;
  readonly session?: number;
  readonly group?: string;
  readonly feeling?: Feeling;
  /** Percent of the plan; ended early when under 100. */
  readonly done?: number;
  readonly programme?: Programme;
}

let number = 0;

/** A session at nine in the morning, to its end unless said otherwise. */
export function did({
  date,
  week,
  session = 1,
  group = 'curlew',
  feeling = {},
  done = 100,
  programme = HERON,
}: Did): LogEntry {
  const plan = sessionsFor(programme.weeks[week - 1], group)[session - 1];
  const seconds = Math.round((1860 * done) / 100);
  number += 1;
  return {
    format: 'towpath-log/2',
    id: `e${String(number).padStart(6, '0')}`,
    programme: { id: programme.id, revision: 1, title: programme.title },
    group: { id: group, name: group },
    week,
    session,
    plan: plan?.text ?? '30 min walk',
    target: programme.weeks[week - 1]?.effort ?? 50,
    startedAt: Date.parse(`${date}T09:00:00Z`),
    offsetMinutes: 0,
    zone: 'Europe/London',
    localDate: date,
    outcome: done >= 100 ? 'finished' : 'ended-early',
    doneSeconds: seconds,
    activeSeconds: seconds,
    covered: seconds > 0 ? [[0, seconds]] : [],
    feeling,
    how: 'app',
  };
}

export const followed = (
  part: { startedOn?: string; pauses?: readonly Pause[]; decisions?: readonly Decision[] } = {},
): Following => ({
  format: 'towpath-following/1',
  programmeId: HERON.id,
  pauses: [],
  decisions: [],
  ...part,
});

export const situation = (
  today: string,
  entries: readonly LogEntry[],
  part: Partial<Situation> = {},
): Situation => ({ programme: HERON, group: 'curlew', entries, today, ...part });

/** How things stand for somebody who did that. */
export const now = (today: string, done: readonly Did[] = [], part: Partial<Situation> = {}) =>
  nowOf(situation(today, done.map(did), part));

export const at = (week: number, weekday: number, session = 1): Did => ({
  date: on(week, weekday),
  week,
  session,
});
/** The first two sessions of weeks, on Tuesday and Friday. */
export const twice = (...weeks: readonly number[]): readonly Did[] =>
  weeks.flatMap((week) => [at(week, 2, 1), at(week, 5, 2)]);

export const names = (today: string, done: readonly Did[], part: Partial<Situation> = {}) =>
  now(today, done, part).weeks.map(({ name }) => name);
