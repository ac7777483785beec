import type { RatingWay } from '../back/session.ts';
import type { Decision } from '../log/following.ts';
import { bodyFindings, hasNiggle, lastSign } from './body.ts';
import { type Course, courseOf, type ReEntry } from './course.ts';
import { dayIn } from './days.ts';
import { easierTimes, harderFindings, ratedCount } from './felt.ts';
import { type Action, type Finding, finding, LEADS_TO, severityOf } from './finding.ts';
import { type Change, changesOf } from './minds.ts';
import { thinWeek } from './missed.ts';
import {
  easeMove,
  longestRunLately,
  type Move,
  neighbours,
  reEntryMove,
  repeatMove,
  stepUpMove,
  weekNow,
} from './moves.ts';
import { nowIn } from './now.ts';
import { restOn } from './rest.ts';
import { rule } from './rules.ts';
import { enoughOf, type Situation } from './situation.ts';

/** One piece of advice: what to do, because of what, and what would change it. */
export interface Advice {
  readonly action: Action;
  /** What decides it. */
  readonly because: Finding;
  /** What else was seen, heaviest first. */
  readonly also: readonly Finding[];
  readonly changes: readonly Change[];
  /** What saying yes would decide; nothing for going on, resting and stopping. */
  readonly move?: Move;
  /** What the person has decided already for a day to come. */
  readonly decided?: Decision;
}

function awayFinding(reEntry: ReEntry | undefined): readonly Finding[] {
  if (reEntry === undefined || reEntry.back === 0) return [];
  const { days, week, back, why } = reEntry;
  return [finding('away', { days, week, back, why })];
}

/** Weeks missed, days away and pauses. */
function timeFindings(situation: Situation, course: Course): readonly Finding[] {
  const { reEntry, pause, monday, today, lastDecision } = course;
  if (pause !== undefined) return [finding('paused', { why: pause.why, from: pause.from })];
  const thin = thinWeek(situation, course);
  // A decision of this week or the last has answered for the week that was thin.
  const isAnswered = lastDecision !== undefined && lastDecision.day >= monday - 7;
  const isThin =
    thin !== undefined &&
    !isAnswered &&
    !reEntry &&
    !isEventNear(situation, today) &&
    !hasEnough(situation, course);
  return [...awayFinding(reEntry), ...(isThin ? [finding('thin-week', thin)] : [])];
}

/** This week has its fewest sessions already: that answers for a thin one before it. */
function hasEnough(situation: Situation, course: Course): boolean {
  const week = situation.programme.weeks[weekNow(situation, course) - 1];
  const done = course.done.filter(({ day }) => day >= course.monday).length;
  return done >= enoughOf(week, situation.group);
}

function isEventNear({ programme }: Situation, today: number): boolean {
  const event = dayIn(programme.goal.date);
  return event !== undefined && event >= today && event - today <= rule('eventNear');
}

/** Whether something but the feeling of the sessions stands against more. */
function againstMore(situation: Situation, course: Course): string | undefined {
  const { today, reEntry } = course;
  if (isEventNear(situation, today)) return 'event';
  const sign = lastSign(situation, today);
  if (sign !== undefined && today - sign <= rule('afterSign')) return 'sign';
  if (hasNiggle(situation, today)) return 'niggle';
  if (reEntry !== undefined) return 'away';
  if (neighbours(situation).harder === undefined) return 'hardest';
  return stepUpMove(situation, course) === undefined ? 'far' : undefined;
}

/** What is seen when nothing asks for less. */
function steadyFinding(situation: Situation, course: Course, rating: RatingWay): Finding {
  if (course.done.length === 0) return finding('starting');
  if (nowIn(situation, course, rating).stage === 'through') return finding('through');
  const easier = easierTimes(situation, course, rating);
  if (easier !== undefined) {
    const detail = { ...easier, points: rule('harder') };
    const against = againstMore(situation, course);
    const longest = Math.round(longestRunLately(situation, course) / 1000);
    return against === undefined
      ? finding('easier', { ...detail, longest })
      : finding('easier-but', { ...detail, against, longest });
  }
  const rated = ratedCount(situation, course, rating);
  return rated < rule('agree')
    ? finding('few-rated', { rated })
    : finding('as-meant', { rated, ordinary: rule('ordinary') });
}

function restFindings(situation: Situation, rating: RatingWay): readonly Finding[] {
  const rest = restOn(situation, rating);
  return rest?.code === 'two-hard' ? [finding('hard-days', { until: rest.until })] : [];
}

/** Whether something gentler was taken since a niggle: it is eased for once, not once a day. */
function isEased({ following, today }: Situation, { code, detail }: Finding): boolean {
  if (code !== 'niggle-eased' && code !== 'niggle-moved') return false;
  const since = String(detail.date);
  return (following?.decisions ?? []).some(
    ({ why, on }) => why === 'ease' && on >= since && on <= today,
  );
}

function moveFor(situation: Situation, course: Course, because: Finding): Move | undefined {
  const action = LEADS_TO[because.code];
  if (because.code === 'away' && course.reEntry) return reEntryMove(situation, course.reEntry.week);
  if (action === 'repeat') return repeatMove(situation, course);
  if (action === 'ease')
    return isEased(situation, because) ? undefined : easeMove(situation, course);
  return action === 'step-up' ? stepUpMove(situation, course) : undefined;
}

const decisionOf = ({ on, week, group, why }: Decision): Decision => ({ on, week, group, why });

/**
 * What a good leader would say to this person today, for every history: the heaviest of what was
 * seen decides. A proposal; the person decides.
 */
export function adviceFor(situation: Situation, rating: RatingWay = 'at-the-end'): Advice {
  const course = courseOf(situation);
  const seen = [
    ...bodyFindings(situation, course),
    ...restFindings(situation, rating),
    ...timeFindings(situation, course),
    ...harderFindings(situation, course, rating),
  ];
  const steady = steadyFinding(situation, course, rating);
  const found = seen.length > 0 && steady.code !== 'through' ? seen : [...seen, steady];
  const [because = steady, ...others] = [...found].sort(
    (a, b) => severityOf(b.code) - severityOf(a.code),
  );
  // Beside a sign nothing is said that would explain it away.
  const isSign = because.code === 'warning-sign';
  const also = others.filter(({ code }) => !isSign || severityOf(code) >= severityOf('hard-days'));
  const move = moveFor(situation, course, because);
  return {
    action: LEADS_TO[because.code],
    because,
    also,
    changes: changesOf(because),
    ...(move && { move }),
    ...(course.upcoming && { decided: decisionOf(course.upcoming) }),
  };
}
