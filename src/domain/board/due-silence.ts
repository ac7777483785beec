/** Nothing heard of somebody as a reason for a word. */
import { sessionsFor } from '../advice/situation.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import type { Programme } from '../programme/programme.ts';
import type { Calendar } from './calendar.ts';
import type { DueReason } from './due.ts';
import { type Looked, reason } from './due-looked.ts';
import { boardLimit } from './limits.ts';
import type { Seen } from './row.ts';

/** Whether the programme asked anything of a group in the days after one, up to another. */
function wasAsked(programme: Programme, group: string, calendar: Calendar, from: Day): boolean {
  const { start, today } = calendar;
  if (start === undefined) return sessionsFor(programme.weeks[calendar.week - 1], group).length > 0;
  return programme.weeks.some((week, n) => {
    const monday = start + 7 * n;
    return monday + 6 > from && monday < today && sessionsFor(week, group).length > 0;
  });
}

/** Without dates the programme is over for who has told of its last week. */
const hasAll = ({ record }: Seen, weeks: number): boolean =>
  record.sessions.some(({ week }) => week >= weeks);

/**
 * Whether nothing was heard for two weeks of the programme. Days before its start and behind its
 * last week do not count, and who never was heard is not silent: there is no reply yet.
 */
export function silence({ programme, seen, calendar, last }: Looked): readonly DueReason[] {
  const { today, start } = calendar;
  const weeks = programme.weeks.length;
  const from = Math.max(last, start ?? last);
  if (today - from < boardLimit('silent')) return [];
  const isOver = start === undefined ? hasAll(seen, weeks) : today >= start + 7 * weeks;
  if (isOver || !wasAsked(programme, seen.row.group, calendar, from)) return [];
  return [reason('silent', { days: today - last, date: isoDate(last) })];
}
