import { localDate } from '../../domain/log/local-date.ts';
import { useApp } from '../app-context.tsx';

/** The calendar date (ISO 8601) on this phone at a moment, given in UTC milliseconds. */
export function useDateAt(): (at: number) => string {
  const { clock } = useApp();
  return (at) => localDate(at, clock.zoneTime(at).offsetMinutes);
}
