import { stripInWords } from '../../copy/words.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { planOf } from './plan-of.ts';
import { timelineOf } from './plans.ts';
import { Strip } from './Strip.tsx';

/** The landscape of a session that ended: what was gone through is drawn full. */
export function CoveredStrip({
  entry,
  height,
  named = false,
}: {
  entry: LogEntry;
  height: number;
  named?: boolean;
}) {
  const plan = planOf(entry.plan);
  if (plan === undefined) return null;
  return (
    <Strip
      timeline={timelineOf(plan)}
      height={height}
      covered={entry.covered}
      label={stripInWords(plan)}
      named={named}
    />
  );
}
