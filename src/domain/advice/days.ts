import type { Day } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';

/** The day of an ISO 8601 date; nothing that is no date lies anywhere. */
export const dayIn = (date: string | undefined): Day | undefined =>
  date === undefined ? undefined : dayOf(date);
