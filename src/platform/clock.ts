import type { Clock } from '../app/ports.ts';

/** The only place where the wall clock and the monotonic clock are read. */
export const systemClock: Clock = {
  now: () => Date.now(),
  monotonic: () => performance.now(),
  zoneTime: (utc) => ({
    offsetMinutes: -new Date(utc).getTimezoneOffset(),
    zone: new Intl.DateTimeFormat().resolvedOptions().timeZone ?? 'UTC',
  }),
  every(milliseconds, job) {
    const timer = setInterval(job, milliseconds);
    return () => clearInterval(timer);
  },
  later(milliseconds, job) {
    const timer = setTimeout(job, milliseconds);
    return () => clearTimeout(timer);
  },
};
