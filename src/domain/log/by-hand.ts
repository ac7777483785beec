import type { Percent } from '../units.ts';
import type { Feeling, LogEntry } from './entry.ts';
import type { Began } from './local-time.ts';
import { LOG_FORMAT } from './read-entry.ts';

/** Which session of which programme, as it was on that day. */
export interface Which {
  readonly programme: LogEntry['programme'];
  readonly group: LogEntry['group'];
  readonly week: number;
  readonly session: number;
  /** The session in shorthand. */
  readonly plan: string;
  readonly target: Percent;
  /** Length of the plan in seconds. */
  readonly planSeconds: number;
}

/** How much was done: all of the plan, or so many seconds of it from its start. */
export type Amount = 'all' | number;

/**
 * A session that the app did not lead, as the person tells it. Of a part nobody knows which: it
 * is taken to be the first.
 */
export const entryByHand = (
  id: string,
  which: Which,
  began: Began,
  amount: Amount,
  how: 'there' | 'by-hand',
): LogEntry => {
  const { planSeconds, ...session } = which;
  return {
    format: LOG_FORMAT,
    id,
    ...session,
    ...began,
    ...doneOf(amount, planSeconds),
    feeling: {},
    how,
  };
};

function doneOf(
  amount: Amount,
  planSeconds: number,
): Pick<LogEntry, 'outcome' | 'doneSeconds' | 'activeSeconds' | 'covered'> {
  const activeSeconds = amount === 'all' ? planSeconds : amount;
  const doneSeconds = Math.min(activeSeconds, planSeconds);
  return {
    outcome: doneSeconds === planSeconds ? 'finished' : 'ended-early',
    doneSeconds,
    activeSeconds,
    covered: [[0, doneSeconds]],
  };
}

/**
 * The group's session that has just ended. It began as long ago as it takes: at midnight that was
 * yesterday.
 *
 * @param began makes what an entry keeps of a moment
 */
export const thereNow = (
  id: string,
  which: Which,
  now: number,
  began: (utc: number) => Began,
): LogEntry => entryByHand(id, which, began(now - which.planSeconds * 1000), 'all', 'there');

/** What was put right; what is left out stays as it was. */
export interface Correction {
  readonly began?: Began;
  readonly amount?: Amount;
  /** Only of a session that the app did not lead. */
  readonly which?: Which;
}

/**
 * An entry put right by hand. Its id and what was felt stay.
 *
 * @param planSeconds length of the entry's plan, @param now UTC milliseconds
 */
export function putRight(
  entry: LogEntry,
  { began, amount, which }: Correction,
  planSeconds: number,
  now: number,
): LogEntry {
  const { planSeconds: other, ...session } = which ?? { planSeconds };
  return {
    ...entry,
    ...session,
    ...began,
    ...(amount === undefined ? {} : doneOf(amount, other)),
    editedAt: now,
  };
}

/** An entry with what the person says of it. A distance that is no longer given is taken out. */
export function withFeeling(
  { distanceM: _, ...entry }: LogEntry,
  feeling: Feeling,
  distanceM: number | undefined,
  now: number,
): LogEntry {
  return { ...entry, feeling, feltAt: now, ...(distanceM === undefined ? {} : { distanceM }) };
}

/** Another session of the same person that was going on at the same time. */
export const atTheSameTime = (
  entries: readonly LogEntry[],
  entry: Pick<LogEntry, 'id' | 'startedAt' | 'activeSeconds'>,
): LogEntry | undefined =>
  entries.find(
    (other) =>
      other.id !== entry.id &&
      other.startedAt < entry.startedAt + entry.activeSeconds * 1000 &&
      entry.startedAt < other.startedAt + other.activeSeconds * 1000,
  );
