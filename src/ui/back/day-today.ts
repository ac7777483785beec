import type { Day } from '../../domain/programme/calendar.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import { useApp } from '../app-context.tsx';
import { useDateAt } from '../parts/date-at.ts';

/** Today on this phone, as a day since 1970-01-01. */
export function useDayToday(): Day {
  const { clock } = useApp();
  return dayOf(useDateAt()(clock.now())) ?? 0;
}
