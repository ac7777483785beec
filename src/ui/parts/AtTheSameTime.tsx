import { byHand } from '../../copy/by-hand.ts';
import { day, timeOfDay } from '../../copy/times.ts';
import { atTheSameTime } from '../../domain/log/by-hand.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { useLog } from '../app-context.tsx';

/** Says that another session is written down for the same time; the person knows which is right. */
export function AtTheSameTime({ entry }: { entry: LogEntry | undefined }) {
  const entries = useLog((l) => l.entries);
  const other = entry && atTheSameTime(entries, entry);
  return (
    <div role="status">
      {other !== undefined && (
        <p className="notice">
          {byHand.same(day(other.localDate), timeOfDay(other.startedAt, other.offsetMinutes))}
        </p>
      )}
    </div>
  );
}
