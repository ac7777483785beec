import type { Decision } from '../log/following.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import { factsOf } from '../review/facts.ts';
import { weekAt } from './bases.ts';
import { type Course, courseOf } from './course.ts';
import { askOf, ranked } from './demand.ts';
import { rule } from './rules.ts';
import { type Situation, sessionsFor } from './situation.ts';

/** A decision that is proposed: the week and group that would be theirs from a day on. */
export type Move = Decision;

/** The programme's week that is theirs now, within its bounds. */
export const weekNow = ({ programme }: Situation, { bases, monday }: Course): number =>
  Math.min(programme.weeks.length, Math.max(1, weekAt(bases, monday) ?? 1));

/** The next gentler and the next harder group by what they ask, if any. */
export function neighbours({ programme, group }: Situation): {
  readonly gentler?: string;
  readonly harder?: string;
} {
  const order = ranked(programme).map((demand) => demand.group.id);
  const at = order.indexOf(group);
  if (at < 0) return {};
  const [gentler, harder] = [order[at - 1], order[at + 1]];
  return { ...(gentler && { gentler }), ...(harder && { harder }) };
}

/** Once more the week of the last session: this week when that was before, or else from Monday. */
export function repeatMove(situation: Situation, course: Course): Move {
  const last = course.done.findLast(({ entry }) => entry.group.id === situation.group);
  const now = weekNow(situation, course);
  const isThisWeek = last !== undefined && last.day >= course.monday;
  const week = Math.min(now, last?.entry.week ?? now);
  const on = isThisWeek ? course.monday + 7 : course.today;
  return { on: isoDate(on), week, group: situation.group, why: 'repeat' };
}

/** The week in which somebody comes back after days away. */
export const reEntryMove = ({ group, today }: Situation, week: number): Move => ({
  on: today,
  week,
  group,
  why: 're-entry',
});

/** Back after having asked: where days away have put them, or else the week that is theirs. */
export function askedMove(situation: Situation): Move {
  const course = courseOf(situation);
  const { group, today } = situation;
  return { on: today, week: weekNow(situation, course), group, why: 'asked' };
}

/** The neighbouring gentler group in the same week; in the gentlest, the week before. */
export function easeMove(situation: Situation, course: Course): Move {
  const { gentler } = neighbours(situation);
  const now = weekNow(situation, course);
  return {
    on: situation.today,
    week: gentler === undefined ? Math.max(1, now - 1) : now,
    group: gentler ?? situation.group,
    why: 'ease',
  };
}

/** The longest run in the sessions gone through to the end lately, in milliseconds. */
export function longestRunLately({ programme }: Situation, { done, today }: Course): number {
  const from: Day = today - rule('runsBefore');
  const runs = done
    .filter(({ day, entry }) => day >= from && entry.outcome === 'finished')
    .map(({ entry }) => {
      const plans = sessionsFor(programme.weeks[entry.week - 1], entry.group.id);
      const plan = plans[entry.session - 1];
      return plan === undefined ? 0 : factsOf(plan.plan).stretch;
    });
  return Math.max(0, ...runs);
}

/**
 * The latest week of the next harder group, up to this one, whose longest run is not far beyond
 * the longest done lately.
 *
 * @returns nothing where there is no harder group, or none of its weeks is within reach
 */
export function stepUpMove(situation: Situation, course: Course): Move | undefined {
  const { harder } = neighbours(situation);
  if (harder === undefined) return undefined;
  const longest = longestRunLately(situation, course);
  const reach = Math.max(
    (longest * (100 + rule('runLonger'))) / 100,
    longest + rule('runLongerFloor') * 1000,
  );
  for (let week = weekNow(situation, course); week >= 1; week -= 1) {
    const written = situation.programme.weeks[week - 1];
    if (written !== undefined && askOf(written, harder).run <= reach)
      return { on: situation.today, week, group: harder, why: 'step-up' };
  }
  return undefined;
}
