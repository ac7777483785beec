/** Warning signs and niggles as reasons for a word. */
import { bodyFindings } from '../advice/body.ts';
import { dayIn } from '../advice/days.ts';
import type { FindingCode } from '../advice/finding.ts';
import { rule } from '../advice/rules.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import type { BoardSession } from './board.ts';
import type { DueReason } from './due.ts';
import { courseOn, type Looked, reason, situationOn } from './due-looked.ts';

const dayOfSession = ({ localDate }: BoardSession): Day => dayIn(localDate) ?? 0;

/**
 * The warning signs of the last 28 days. What was told afterwards takes none of them away: only
 * that they went out again is said with it.
 */
export function signs({ seen, calendar }: Looked): readonly DueReason[] {
  const { sessions } = seen.record;
  const felt = sessions.filter(
    (session) => session.sign && calendar.today - dayOfSession(session) <= rule('afterSign'),
  );
  const last = felt.at(-1);
  if (last === undefined) return [];
  const since = sessions.length - 1 - sessions.lastIndexOf(last);
  return [reason('sign', { date: last.localDate, times: felt.length, since })];
}

const AGAIN: ReadonlySet<FindingCode> = new Set(['niggle-back', 'niggle-twice', 'niggle-eased']);

/** Niggles that are back, by the rules of advice, and the last of 14 days that changed something. */
export function niggles(looked: Looked): readonly DueReason[] {
  const { today } = looked.calendar;
  const felt = looked.seen.record.sessions.filter(({ niggle }) => niggle !== undefined);
  const since = isoDate(today - 2 * rule('niggleAgain'));
  const situation = felt.length < 2 ? undefined : situationOn(looked, today, since);
  const again = (situation ? bodyFindings(situation, courseOn(situation)) : [])
    .filter(({ code }) => AGAIN.has(code))
    .map(({ detail }) => reason('niggle-again', detail));
  const alone = felt.flatMap((session): DueReason[] => {
    const { place, side, severity = 1 } = session.niggle ?? {};
    const ago = today - dayOfSession(session);
    if (severity < 2 || ago < 0 || ago > rule('niggleAgain') || place === undefined) return [];
    if (again.some(({ detail }) => detail.place === place)) return [];
    const detail = { place, ...(side && { side }), severity, date: session.localDate };
    return [reason('niggle', detail)];
  });
  return [...again, ...alone.slice(-1)];
}
