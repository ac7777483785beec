import type { LogEntry } from '../log/entry.ts';
import type { Day } from '../programme/calendar.ts';
import { dayOfEntry } from './week.ts';

/** No estimate for so many days after a warning sign (common practice, no source). */
export const WARNED_DAYS = 14;

/** The latest session with a warning sign that is not yet so long ago, or nothing. */
export function warnedBy(entries: readonly LogEntry[], today: Day): LogEntry | undefined {
  return entries
    .filter(
      (entry) => entry.feeling.warningSign === true && today - dayOfEntry(entry) < WARNED_DAYS,
    )
    .reduce<LogEntry | undefined>(
      (latest, entry) =>
        latest === undefined || entry.startedAt > latest.startedAt ? entry : latest,
      undefined,
    );
}
