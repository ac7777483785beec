/** How sessions felt as a reason for a word: harder than meant, cut short, or clearly too easy. */
import { type Advice, adviceFor } from '../advice/advice.ts';
import { easierTimes, harderFindings } from '../advice/felt.ts';
import type { Finding, FindingCode } from '../advice/finding.ts';
import { rule } from '../advice/rules.ts';
import type { Situation } from '../advice/situation.ts';
import { isoDate } from '../programme/calendar.ts';
import type { BoardSession } from './board.ts';
import { gapOf } from './cells.ts';
import type { DueReason } from './due.ts';
import { courseOn, type Looked, reason, situationOn } from './due-looked.ts';

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
export function effort(looked: Looked): readonly DueReason[] {
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
export function more(looked: Looked): readonly DueReason[] {
  const { way } = looked.seen.record;
  const lately = latelySo(looked, isEasy);
  if (lately === undefined || easierTimes(lately, courseOn(lately), way) === undefined) return [];
  const situation = situationOn(looked, looked.last);
  return moreFrom(adviceFor(situation, way), situation.today);
}
