/** The place that a clock was in: what an entry keeps beside UTC. */
export interface ZoneTime {
  /** Minutes east of UTC. */
  readonly offsetMinutes: number;
  /** Name in the IANA time zone database. */
  readonly zone: string;
}

/**
 * The calendar date at a place, as ISO 8601.
 *
 * @param utc UTC milliseconds, @param offsetMinutes minutes east of UTC at that moment
 */
export const localDate = (utc: number, offsetMinutes: number): string =>
  new Date(utc + offsetMinutes * 60_000).toISOString().slice(0, 10);
