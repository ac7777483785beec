import { dayOf } from '../programme/dates.ts';
import type { Programme } from '../programme/programme.ts';
import { sidesOf } from './compare.ts';
import type { Sheet } from './sheet.ts';

/** How a week of a sheet stands to what was sent, and to today. */
export interface WeekStanding {
  /** `moved`: it was sent as it is, as another week. */
  readonly sent: 'same' | 'changed' | 'moved' | 'new';
  /** Its place in what was sent, from 0. */
  readonly was?: number;
  /** Nothing: there is no start date. A week is past when its Sunday is. */
  readonly time?: 'past' | 'now' | 'ahead';
}

type SentAs = Pick<WeekStanding, 'sent' | 'was'>;

function sentAs(before: Programme, now: Sheet): ReadonlyMap<number, SentAs> {
  const { weeks, said } = sidesOf(before, now);
  const isWhole = (was: number, week: number): boolean =>
    now.groups.every(({ id }) => said.before(was, id) === said.now(week, id));
  const standing = new Map<number, SentAs>();
  for (const { was, now: week } of weeks.changed) standing.set(week, { sent: 'changed', was });
  for (const { was, now: week } of weeks.same) {
    const whole = was === week ? 'same' : 'moved';
    standing.set(week, { sent: isWhole(was, week) ? whole : 'changed', was });
  }
  return standing;
}

function timeOf(start: number, week: number, today: number): WeekStanding['time'] {
  const monday = start + week * 7;
  if (today < monday) return 'ahead';
  return today < monday + 7 ? 'now' : 'past';
}

/**
 * Week by week: whether participants have it as it is here, and whether it is over.
 *
 * @param before the revision that was sent last; nothing: none was
 * @param today local calendar date, ISO 8601
 */
export function weekStanding(
  before: Programme | undefined,
  now: Sheet,
  today: string,
): readonly WeekStanding[] {
  const sent = before === undefined ? undefined : sentAs(before, now);
  const start = now.startDate === undefined ? undefined : dayOf(now.startDate);
  const day = dayOf(today);
  return now.weeks.map((_, week) => {
    const time = start === undefined || day === undefined ? undefined : timeOf(start, week, day);
    return {
      ...(sent?.get(week) ?? { sent: 'new' as const }),
      ...(time === undefined ? {} : { time }),
    };
  });
}
