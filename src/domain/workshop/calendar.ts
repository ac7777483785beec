const DAY_MS = 86_400_000;

/** The Monday on or before a day; days count from 1970-01-01, a Thursday (ISO 8601 weekday 4). */
export const mondayOf = (day: number): number => day - ((((day + 3) % 7) + 7) % 7);

/** A day, counted from 1970-01-01, as an ISO 8601 calendar date. */
export const isoDate = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);
