import { type Advice, adviceFor } from '../advice/advice.ts';
import { bodyFindings } from '../advice/body.ts';
import { courseOf } from '../advice/course.ts';
import { easierTimes, harderFindings } from '../advice/felt.ts';
import type { Finding, FindingCode } from '../advice/finding.ts';
import { rule } from '../advice/rules.ts';
import { inOrder, type Situation, sessionsFor } from '../advice/situation.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import type { Detail } from '../programme/problem.ts';
import type { Programme } from '../programme/programme.ts';
import type { BoardInput } from './board.ts';
import type { Calendar } from './calendar.ts';
import { DUE_CODES, type Due, type DueCode, type DueReason } from './due.ts';
import { boardLimit } from './limits.ts';
import { everybodyIn, type Seen } from './row.ts';

const reason = (code: DueCode, detail: Detail): DueReason => ({ code, detail });

/** The last day of which something is known: they told, or were there. */
const lastKnown = ({ told, record }: Seen): Day | undefined => {
  const last = inOrder(record.log).at(-1)?.day;
  return told === undefined ? last : Math.max(told, last ?? told);
};

/** A person's situation as far as the leader knows it, on a day. */
const situationOf = (programme: Programme, { row, record }: Seen, day: Day): Situation => ({
  programme,
  group: row.group,
  entries: record.log,
  today: isoDate(day),
});

/**
 * The warning signs of the last 28 days. What was told afterwards takes none of them away: only
 * that they went out again is said with it.
 */
function signs({ record }: Seen, today: Day): readonly DueReason[] {
  const told = inOrder(record.log).filter(({ day }) => today - day <= rule('afterSign'));
  const felt = told.filter(({ entry }) => entry.feeling.warningSign === true);
  const last = felt.at(-1);
  if (last === undefined) return [];
  const since = told.filter(({ entry }) => entry.startedAt > last.entry.startedAt).length;
  return [reason('sign', { date: isoDate(last.day), times: felt.length, since })];
}

const AGAIN: ReadonlySet<FindingCode> = new Set(['niggle-back', 'niggle-twice', 'niggle-eased']);

const whereOf = ({ place, side }: { readonly place: string; readonly side?: string }): Detail => ({
  place,
  ...(side && { side }),
});

/** Niggles that are back, by the rules of advice, and those of 14 days that changed something. */
function niggles(situation: Situation, { record }: Seen, today: Day): readonly DueReason[] {
  const again = bodyFindings(situation, courseOf(situation))
    .filter(({ code }) => AGAIN.has(code))
    .map(({ detail }) => reason('niggle-again', detail));
  const alone = inOrder(record.log)
    .filter(({ day }) => day <= today && today - day <= rule('niggleAgain'))
    .flatMap(({ day, entry }): DueReason[] => {
      const { niggle } = entry.feeling;
      if (niggle === undefined || (niggle.severity ?? 1) < 2) return [];
      if (again.some(({ detail }) => detail.place === niggle.place)) return [];
      const severity = niggle.severity ?? 1;
      return [reason('niggle', { ...whereOf(niggle), severity, date: isoDate(day) })];
    });
  return [...again, ...alone.slice(-1)];
}

/** How the latest sessions felt, as of the day of which something is known last. */
function effort(situation: Situation, seen: Seen): readonly DueReason[] {
  const found = harderFindings(situation, courseOf(situation), seen.record.way);
  const date = situation.today;
  const first = (...codes: readonly FindingCode[]): Finding | undefined =>
    codes.flatMap((code) => found.filter((each) => each.code === code))[0];
  const harder = first('much-harder', 'harder', 'still-harder');
  const cut = first('cut-short', 'still-cut-short');
  return [
    ...(harder ? [reason('harder', { ...harder.detail, date })] : []),
    ...(cut ? [reason('cut-short', { ...cut.detail, date })] : []),
  ];
}

/** Why easier sessions lead nowhere at once and are still worth a word. */
const OUT_OF_REACH: ReadonlySet<unknown> = new Set(['hardest', 'far']);

function moreFrom({ because, move }: Advice, date: string): readonly DueReason[] {
  const { times = 0, of = 0, points = 0, against = '' } = because.detail;
  const numbers = { times, of, points, date };
  if (because.code === 'easier' && move !== undefined)
    return [reason('ready', { ...numbers, group: move.group, week: move.week })];
  return because.code === 'easier-but' && OUT_OF_REACH.has(against)
    ? [reason('easy', { ...numbers, against })]
    : [];
}

/** Whether they could do more: what their own phone would say to them on that day. */
function more(situation: Situation, { record }: Seen): readonly DueReason[] {
  if (easierTimes(situation, courseOf(situation), record.way) === undefined) return [];
  return moreFrom(adviceFor(situation, record.way), situation.today);
}

/** Whether the programme asked anything of a group in the days after one, up to another. */
function wasAsked(programme: Programme, group: string, calendar: Calendar, from: Day): boolean {
  const { start, today } = calendar;
  if (start === undefined) return sessionsFor(programme.weeks[calendar.week - 1], group).length > 0;
  return programme.weeks.some((week, n) => {
    const monday = start + 7 * n;
    return monday + 6 > from && monday < today && sessionsFor(week, group).length > 0;
  });
}

/**
 * Whether nothing was heard for two weeks of the programme. Days before its start and behind its
 * last week do not count, and who never was heard is not silent: there is no reply yet.
 */
function silence(programme: Programme, seen: Seen, calendar: Calendar): readonly DueReason[] {
  const last = lastKnown(seen);
  if (last === undefined) return [];
  const { today, start } = calendar;
  const weeks = programme.weeks.length;
  const from = Math.max(last, start ?? last);
  if (today - from < boardLimit('silent')) return [];
  const isOver = start === undefined ? hasAll(seen, weeks) : today >= start + 7 * weeks;
  if (isOver || !wasAsked(programme, seen.row.group, calendar, from)) return [];
  return [reason('silent', { days: today - last, date: isoDate(last) })];
}

/** Without dates the programme is over for who has told of its last week. */
const hasAll = ({ record }: Seen, weeks: number): boolean =>
  record.log.some(({ week }) => week >= weeks);

function reasonsOf(programme: Programme, seen: Seen, calendar: Calendar): readonly DueReason[] {
  const { today } = calendar;
  const body = situationOf(programme, seen, today);
  const grave = [...signs(seen, today), ...niggles(body, seen, today)];
  // Beside a sign nothing stands that would explain it away.
  if (grave.some(({ code }) => code === 'sign')) return grave;
  const last = Math.min(today, lastKnown(seen) ?? today);
  const isFresh = today - last <= boardLimit('stillFresh');
  // Of the days since they told nothing is known: they are no days without a session.
  const then = situationOf(programme, seen, last);
  const felt = isFresh ? effort(then, seen) : [];
  const easy = isFresh && grave.length === 0 && felt.length === 0 ? more(then, seen) : [];
  return [...grave, ...felt, ...silence(programme, seen, calendar), ...easy];
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
  const { calendar, people } = everybodyIn(input);
  return people
    .flatMap((seen): Due[] => {
      if (seen.record.log.length === 0 && seen.told === undefined) return [];
      const found = [...reasonsOf(input.programme, seen, calendar)];
      const [first, ...rest] = found.sort((a, b) => rank(a.code) - rank(b.code));
      return first === undefined ? [] : [{ person: seen.row.person, reasons: [first, ...rest] }];
    })
    .sort(byNeed);
}
