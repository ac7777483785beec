import { feltOf, type RatingWay } from '../back/session.ts';
import type { LogEntry } from '../log/entry.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import { dayIn } from './days.ts';
import { rule } from './rules.ts';
import { between, type Situation } from './situation.ts';

/** A word about rest. Nothing is forbidden by it. */
export interface Rest {
  /** `two-hard`: hard days running. `two-days`: sessions on days running. `today`: done for today. */
  readonly code: 'two-hard' | 'two-days' | 'today';
  /** The first day on which it no longer holds, ISO 8601. */
  readonly until: string;
}

/** Hardest rating of each of the last days, of all programmes: legs do not tell them apart. */
function hardestByDay(
  entries: readonly LogEntry[],
  today: Day,
  rating: RatingWay,
): ReadonlyMap<Day, number> {
  const days = new Map<Day, number>();
  for (const { day, entry } of between(entries, today - rule('hardDays'), today)) {
    if (entry.activeSeconds <= 0) continue;
    const effort = feltOf(entry, rating) ?? entry.target / 10;
    days.set(day, Math.max(effort, days.get(day) ?? 0));
  }
  return days;
}

/** The last of the days running, ending today or yesterday, for which something holds. */
function lastOfRun(today: Day, holds: (day: Day) => boolean): Day | undefined {
  const last = [today, today - 1].find(holds);
  if (last === undefined) return undefined;
  for (let n = 1; n < rule('hardDays'); n += 1) if (!holds(last - n)) return undefined;
  return last;
}

/** What is to be said about rest on a day: after hard days running first, then days running. */
export function restOn(
  { entries, today }: Pick<Situation, 'entries' | 'today'>,
  rating: RatingWay = 'at-the-end',
): Rest | undefined {
  const day = dayIn(today);
  if (day === undefined) return undefined;
  const hardest = hardestByDay(entries, day, rating);
  const hard = lastOfRun(day, (each) => (hardest.get(each) ?? -1) >= rule('hard'));
  if (hard !== undefined) return { code: 'two-hard', until: isoDate(hard + 2) };
  const running = lastOfRun(day, (each) => hardest.has(each));
  if (running !== undefined) return { code: 'two-days', until: isoDate(running + 2) };
  return hardest.has(day) ? { code: 'today', until: isoDate(day + 1) } : undefined;
}
