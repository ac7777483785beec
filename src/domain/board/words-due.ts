import { type Advice, adviceFor } from '../advice/advice.ts';
import { bodyFindings } from '../advice/body.ts';
import { type Course, courseOf } from '../advice/course.ts';
import { dayIn } from '../advice/days.ts';
import { easierTimes, harderFindings } from '../advice/felt.ts';
import type { Finding, FindingCode } from '../advice/finding.ts';
import { rule } from '../advice/rules.ts';
import { type Situation, sessionsFor } from '../advice/situation.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import type { Detail } from '../programme/problem.ts';
import type { Programme } from '../programme/programme.ts';
import type { BoardInput, BoardSession } from './board.ts';
import type { Calendar } from './calendar.ts';
import { gapOf } from './cells.ts';
import { DUE_CODES, type Due, type DueCode, type DueReason } from './due.ts';
import { boardLimit } from './limits.ts';
import { logIn } from './record.ts';
import { everybodyIn, type Seen } from './row.ts';

const reason = (code: DueCode, detail: Detail): DueReason => ({ code, detail });

/** What is looked at of one person. */
interface Looked {
  readonly programme: Programme;
  readonly seen: Seen;
  readonly calendar: Calendar;
  /** The day of which something is known last: they told, or were there. */
  readonly last: Day;
}

const dayOfSession = ({ localDate }: BoardSession): Day => dayIn(localDate) ?? 0;

function lastKnown({ told, record }: Seen): Day | undefined {
  const dates = record.sessions.map(({ localDate }) => localDate).sort();
  const day = dayIn(dates.at(-1));
  return told === undefined ? day : Math.max(told, day ?? told);
}

/** A person's situation on a day, as far as the leader knows it. */
const situationOn = ({ programme, seen }: Looked, day: Day, since?: string): Situation => ({
  programme,
  group: seen.row.group,
  entries: logIn(seen.record, seen.person, programme, since),
  today: isoDate(day),
});

/** The course of a day alone: nothing was decided that the leader knows of. */
const courseOn = (situation: Situation): Course => courseOf({ ...situation, entries: [] });

/**
 * The warning signs of the last 28 days. What was told afterwards takes none of them away: only
 * that they went out again is said with it.
 */
function signs({ seen, calendar }: Looked): readonly DueReason[] {
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
function niggles(looked: Looked): readonly DueReason[] {
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

const isOff = (session: BoardSession): boolean =>
  session.cutShort || (gapOf(session) ?? 0) >= rule('harder');
const isEasy = (session: BoardSession): boolean => (gapOf(session) ?? 0) <= -rule('harder');

/**
 * The situation of the day of which something is known last, with what lies near enough to count;
 * nothing where too few sessions are such as would matter: most people need not be asked about.
 */
function latelySo(
  looked: Looked,
  matters: (session: BoardSession) => boolean,
): Situation | undefined {
  const since = isoDate(looked.last - rule('lookBack'));
  const { sessions } = looked.seen.record;
  const so = sessions.filter((session) => session.localDate >= since && matters(session));
  return so.length < rule('agree') ? undefined : situationOn(looked, looked.last, since);
}

/** How the latest sessions felt. */
function effort(looked: Looked): readonly DueReason[] {
  const situation = latelySo(looked, isOff);
  if (situation === undefined) return [];
  const found = harderFindings(situation, courseOn(situation), looked.seen.record.way);
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
function more(looked: Looked): readonly DueReason[] {
  const { way } = looked.seen.record;
  const lately = latelySo(looked, isEasy);
  if (lately === undefined || easierTimes(lately, courseOn(lately), way) === undefined) return [];
  const situation = situationOn(looked, looked.last);
  return moreFrom(adviceFor(situation, way), situation.today);
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

/** Without dates the programme is over for who has told of its last week. */
const hasAll = ({ record }: Seen, weeks: number): boolean =>
  record.sessions.some(({ week }) => week >= weeks);

/**
 * Whether nothing was heard for two weeks of the programme. Days before its start and behind its
 * last week do not count, and who never was heard is not silent: there is no reply yet.
 */
function silence({ programme, seen, calendar, last }: Looked): readonly DueReason[] {
  const { today, start } = calendar;
  const weeks = programme.weeks.length;
  const from = Math.max(last, start ?? last);
  if (today - from < boardLimit('silent')) return [];
  const isOver = start === undefined ? hasAll(seen, weeks) : today >= start + 7 * weeks;
  if (isOver || !wasAsked(programme, seen.row.group, calendar, from)) return [];
  return [reason('silent', { days: today - last, date: isoDate(last) })];
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
