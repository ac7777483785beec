const DAY_MS = 86_400_000;

/**
 * Days since 1970-01-01 of an ISO 8601 calendar date (`2027-03-01`), or nothing when there is no
 * such day. Calendar dates carry no zone, so reading them as UTC shifts none of them.
 */
export function dayOf(date: string): number | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return undefined;
  const time = Date.parse(`${date}T00:00:00Z`);
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date) return undefined;
  return time / DAY_MS;
}

/** 1970-01-01 was a Thursday (ISO 8601 weekday 4). */
export const isMonday = (day: number): boolean => (((day + 3) % 7) + 7) % 7 === 0;
