import { dayIn } from '../advice/days.ts';
import type { Day } from '../programme/calendar.ts';
import type { BoardInput } from './board.ts';
import { DUE_CODES, type Due, type DueCode, type DueReason } from './due.ts';
import { niggles, signs } from './due-body.ts';
import { effort, more } from './due-felt.ts';
import type { Looked } from './due-looked.ts';
import { silence } from './due-silence.ts';
import { boardLimit } from './limits.ts';
import { everybodyIn, type Seen } from './row.ts';

/** The day of which something is known last: they told, or were there. */
function lastKnown({ told, record }: Seen): Day | undefined {
  const dates = record.sessions.map(({ localDate }) => localDate).sort();
  const day = dayIn(dates.at(-1));
  return told === undefined ? day : Math.max(told, day ?? told);
}

function reasonsOf(looked: Looked): readonly DueReason[] {
  const grave = [...signs(looked), ...niggles(looked)];
  // Beside a sign nothing stands that would explain it away.
  if (grave.some(({ code }) => code === 'sign')) return grave;
  const isFresh = looked.calendar.today - looked.last <= boardLimit('stillFresh');
  // Of the days since they told nothing is known: they are no days without a session.
  const then = { ...looked, last: Math.min(looked.calendar.today, looked.last) };
  const felt = isFresh ? effort(then) : [];
  const easy = isFresh && grave.length === 0 && felt.length === 0 ? more(then) : [];
  return [...grave, ...felt, ...silence(looked), ...easy];
}

const rank = (code: DueCode): number => DUE_CODES.indexOf(code);
const dateOf = ({ reasons }: Due): string => String(reasons[0].detail.date);

/** Gravest first, then who has waited longest. */
const byNeed = (a: Due, b: Due): number =>
  rank(a.reasons[0].code) - rank(b.reasons[0].code) ||
  (dateOf(a) < dateOf(b) ? -1 : dateOf(a) > dateOf(b) ? 1 : 0) ||
  (a.person < b.person ? -1 : 1);

/**
 * Who needs a word, and why: gravest first, then whose reason is oldest. An ordinary point above
 * the target is no reason (Barnes 2017, doi 10.1186/s40798-017-0105-0).
 *
 * A warning sign stands first for 28 days whatever is told after it, and beside it stand niggles
 * only. The same niggle again, two of three sessions harder than meant, sessions cut short, and
 * whether the next group would fit are what the participant's own advice goes by, asked as of the
 * day of which something is known last. That day may lie two weeks back at most.
 */
export function wordsDue(input: BoardInput): readonly Due[] {
  const { programme } = input;
  const { calendar, people } = everybodyIn(input);
  return people
    .flatMap((seen): Due[] => {
      const last = lastKnown(seen);
      if (last === undefined) return [];
      const found = [...reasonsOf({ programme, seen, calendar, last })];
      const [first, ...rest] = found.sort((a, b) => rank(a.code) - rank(b.code));
      return first === undefined ? [] : [{ person: seen.row.person, reasons: [first, ...rest] }];
    })
    .sort(byNeed);
}
