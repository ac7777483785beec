import { localDate, type ZoneTime } from './local-date.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/** Minutes east of UTC at a moment in UTC milliseconds. */
export type OffsetAt = (utc: number) => number;

/**
 * The offsets of a zone by its name in the IANA time zone database, as this device knows it.
 *
 * @returns nothing for a name that this device does not know
 */
export function offsetIn(zone: string): OffsetAt | undefined {
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    return undefined;
  }
  return (utc) => {
    const said = Object.fromEntries(
      format.formatToParts(utc).map(({ type, value }) => [type, Number(value)]),
    );
    const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = said;
    const shown = Date.UTC(year, month - 1, day, hour, minute, second);
    return Math.round((shown - Math.floor(utc / 1000) * 1000) / MINUTE);
  };
}

/** Whether a calendar has this day, ISO 8601. Engines take 30 February for 2 March. */
export function isDate(date: string): boolean {
  const at = Date.parse(`${date}T00:00:00Z`);
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(`${date}T`);
}

/**
 * The moments at which the clocks of a place show a date and time: one on most days, none when the
 * clocks were put forward over it, two when they were put back over it.
 *
 * @param date ISO 8601 calendar date, @param time `HH:MM`
 * @returns UTC milliseconds, the earlier first
 */
export function momentsOf(date: string, time: string, offsetAt: OffsetAt): readonly number[] {
  const shown = Date.parse(`${date}T${time}:00Z`);
  if (Number.isNaN(shown) || !isDate(date)) return [];
  // No place is a whole day from UTC, so what held a day before and after are all there can be.
  const offsets = new Set([shown - DAY, shown, shown + DAY].map(offsetAt));
  return [...offsets]
    .map((offset) => shown - offset * MINUTE)
    .filter((utc) => utc + offsetAt(utc) * MINUTE === shown)
    .sort((a, b) => a - b);
}

/** When and where something began: what an entry keeps of it. */
export interface Began extends ZoneTime {
  readonly startedAt: number;
  readonly localDate: string;
}

/** A moment as an entry keeps it, at a place whose offset then is known. */
export const beganAt = (startedAt: number, { offsetMinutes, zone }: ZoneTime): Began => ({
  startedAt,
  offsetMinutes,
  zone,
  localDate: localDate(startedAt, offsetMinutes),
});

/** Date and time as the clocks of the place showed them: `2027-03-07` and `17:40`. */
export function clockOf({ startedAt, offsetMinutes }: Began): { date: string; time: string } {
  const shown = new Date(startedAt + offsetMinutes * MINUTE).toISOString();
  return { date: shown.slice(0, 10), time: shown.slice(11, 16) };
}
