import { planReader } from '../../../src/domain/back/laid.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import { isoDate } from '../../../src/domain/programme/calendar.ts';

/** 28 min: 10 walked easily, 12 run in stretches of 2, 6 walked between them. */
export const TURNS = '5 min easy walk; 6 x (2 min run, 1 min walk); 5 min easy walk';
/** 10 walked easily, 20 briskly. */
export const WALKS = '5 min easy walk; 20 min brisk walk; 5 min easy walk';

const read = planReader();

export const laid = (plan: string) => {
  const found = read(plan);
  if (found === undefined) throw new Error(`no plan: ${plan}`);
  return found;
};

let count = 0;

/** A session done whole on Monday 1 March 2027, except for what is said otherwise. */
export function entryWith(more: Partial<LogEntry> = {}): LogEntry {
  const plan = more.plan ?? TURNS;
  const seconds = (read(plan)?.total ?? 0) / 1000;
  const localDate = more.localDate ?? '2027-03-01';
  return {
    format: 'towpath-log/2',
    id: `entry-${count++}`,
    programme: { id: 'heron-loop-spring', revision: 1, title: 'Six weeks to the Heron Loop' },
    group: { id: 'curlew', name: 'Curlew' },
    week: 1,
    session: 1,
    plan,
    target: 50,
    startedAt: Date.parse(`${localDate}T17:40:00Z`),
    offsetMinutes: 0,
    zone: 'Europe/London',
    localDate,
    outcome: 'finished',
    doneSeconds: seconds,
    activeSeconds: seconds,
    covered: [[0, seconds]],
    feeling: {},
    how: 'app',
    ...more,
  };
}

/** The same, written down afterwards: nothing is known of its stretches. */
export const byHand = (more: Partial<LogEntry> = {}): LogEntry =>
  entryWith({ how: 'by-hand', covered: [], ...more });

export const dayAfter = (days: number): string => isoDate(20_878 + days);
