import { dayIn } from '../advice/days.ts';
import { type Day, datesOfWeek, dayAt, isoDate } from '../programme/calendar.ts';
import type { Programme } from '../programme/programme.ts';
import type { Attendance } from './attendance.ts';
import { type Heard, lastSaid } from './heard.ts';
import type { BoardSetup } from './setup.ts';

/** What a leader was told is kept for so many days after the event (KEEP-3). */
const KEPT_DAYS = 90;
/** And for so many after the latest of it, whenever the event was: what just came does not vanish. */
const LEAST_DAYS = 14;

/** All that is kept of one programme's people. */
export interface KeptOf {
  readonly heard: readonly Heard[];
  readonly days: readonly Attendance[];
  readonly setup?: BoardSetup | undefined;
}

/** The day of the latest thing; 0 where there is none. @param moments UTC milliseconds */
const latestDay = (moments: readonly number[]): Day =>
  dayAt(
    moments.reduce((last, at) => Math.max(last, at), 0),
    0,
  );

/** When anything was told, ticked or written. */
const saidIn = ({ heard, days, setup }: KeptOf): readonly number[] => [
  ...heard.map(lastSaid),
  ...days.flatMap(({ which, marks }) => [which.at, ...Object.values(marks).map(({ at }) => at)]),
  ...Object.values(setup?.expected ?? {}).map(({ at }) => at),
];

/** When anything was decided about keeping it: that alone puts nothing off. */
const decidedIn = ({ setup }: KeptOf): readonly number[] => [
  setup?.keep?.at ?? 0,
  ...(setup?.forgotten ?? []).map(({ at }) => at),
];

/** The day of the event; without one the Sunday of the last week; without dates nothing. */
const eventOf = ({ goal, startDate, weeks }: Programme): Day | undefined =>
  dayIn(goal.date ?? datesOfWeek(startDate, weeks.length)?.sunday);

/**
 * The local date from which what is known of a programme's people goes: 90 days after the event,
 * after the end of the last week where the event has no date, and after the latest thing of all
 * where nothing has one or the programme is not here; and never within 14 days of what was told,
 * ticked or written last.
 *
 * @returns nothing: it is kept, or there is nothing
 */
export function goesOn(programme: Programme | undefined, kept: KeptOf): string | undefined {
  if (kept.setup?.keep?.on === true) return undefined;
  if (kept.heard.length + kept.days.length === 0 && kept.setup === undefined) return undefined;
  const said = saidIn(kept);
  const event = (programme && eventOf(programme)) ?? latestDay([...said, ...decidedIn(kept)]);
  return isoDate(Math.max(event + KEPT_DAYS, latestDay(said) + LEAST_DAYS));
}

/** Whether that day has come. @param today local date, ISO 8601 */
export const isDue = (goes: string | undefined, today: string): boolean =>
  goes !== undefined && goes <= today;
