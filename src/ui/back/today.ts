import { localDate } from '../../domain/log/local-date.ts';
import type { Day } from '../../domain/programme/calendar.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import { useApp } from '../app-context.tsx';

/** Today where the phone is. */
export function useToday(): Day {
  const { clock } = useApp();
  const now = clock.now();
  return dayOf(localDate(now, clock.zoneTime(now).offsetMinutes)) ?? 0;
}
