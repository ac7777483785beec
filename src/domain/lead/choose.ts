import { dayIn } from '../advice/days.ts';
import { weekAt, weekWithin } from '../programme/calendar.ts';
import type { SessionPlan } from '../programme/programme.ts';
import { type Outline, sessionsIn } from '../review/outline.ts';
import { layOut } from '../timeline/lay-out.ts';
import { type Ms, ms } from '../units.ts';
import type { LeadGroup, LeadPlan, Voice } from './lead-plan.ts';
import { endOf } from './moments.ts';

/** Which session is led, which groups are there, from when, and how each is heard. */
export interface LeadChoice {
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
  readonly groups: readonly LeadChoiceGroup[];
  readonly tick: boolean;
}

/** One group on the day: whether it is here, when it starts, and how it is told. */
export interface LeadChoiceGroup {
  readonly id: string;
  readonly here: boolean;
  /** Whole minutes after the first start, 0 to {@link LATEST_MINUTE}. */
  readonly minutesLater: number;
  readonly voice: Voice;
}

/** Most that a group can start after the first, in minutes. */
export const LATEST_MINUTE = 30;
const MINUTE = 60_000;
/** Groups that end further apart than this are told of (DAY-3): within 30 s is together. */
export const APART = ms(30_000);

/** The week that a date lies in, from 1; before the first week it is the first, after the last the last. */
export function weekOn({ startDate, weeks }: Outline, today: string): number {
  const [first, day] = [dayIn(startDate), dayIn(today)];
  if (first === undefined || day === undefined) return 1;
  return weekWithin(weekAt(first, day), weeks.length);
}

/** How many sessions a week has, whatever the group: where one plan stands for all, as often as it is done. */
export function sessionCount({ weeks }: Outline, week: number): number {
  const found = weeks[week - 1];
  if (found === undefined) return 0;
  const most = Object.values(found.sessions).map((plans) =>
    plans.length === 1 ? found.timesPerWeek.max : plans.length,
  );
  return Math.max(1, ...most);
}

/** The session that a week's groups do together; where none is, the first. */
export const togetherIn = ({ weeks }: Outline, week: number): number =>
  weeks[week - 1]?.together ?? 1;

/** A group's plan for one session of a week; none: it is not there or cannot be read. */
export function planIn(
  { weeks }: Outline,
  { week, session }: Pick<LeadChoice, 'week' | 'session'>,
  group: string,
): SessionPlan | undefined {
  const found = weeks[week - 1];
  const plans = found === undefined ? [] : sessionsIn(found, group);
  return plans.length === 1 ? plans[0] : plans[session - 1];
}

/** Where choosing begins: today's week, the session done together, all groups from one start, in words. */
export function firstChoice(outline: Outline, today: string): LeadChoice {
  const week = weekOn(outline, today);
  return {
    week,
    session: togetherIn(outline, week),
    groups: outline.groups.map(({ id }) => ({ id, here: true, minutesLater: 0, voice: 'words' })),
    tick: true,
  };
}

/** How groups were led last, for today's session: groups that have come since stand with the others. */
export function choiceAgain(outline: Outline, today: string, last: LeadChoice): LeadChoice {
  const first = firstChoice(outline, today);
  const groups = first.groups.map((each) => last.groups.find(({ id }) => id === each.id) ?? each);
  return { ...first, groups, tick: last.tick };
}

/** One group after the other, in the programme's order; those who are not there take no turn. */
export function staggered(choice: LeadChoice, minutes: number): LeadChoice {
  let turn = 0;
  const groups = choice.groups.map((group) =>
    group.here
      ? { ...group, minutesLater: Math.min(LATEST_MINUTE, minutes * turn++) }
      : { ...group, minutesLater: 0 },
  );
  return { ...choice, groups };
}

/**
 * All groups that are there and have a plan, from the first start on: when the first group starts
 * later, everyone starts that much sooner.
 *
 * @returns nothing where no group is left
 */
export function leadPlanOf(outline: Outline, choice: LeadChoice): LeadPlan | undefined {
  const groups = outline.groups.flatMap(({ id, name }, index): LeadGroup[] => {
    const chosen = choice.groups.find((each) => each.id === id);
    const plan = planIn(outline, choice, id);
    if (chosen?.here !== true || plan === undefined) return [];
    const timeline = layOut(plan.plan);
    const startsAt = ms(chosen.minutesLater * MINUTE);
    return [{ number: index + 1, id, name, timeline, startsAt, voice: chosen.voice }];
  });
  if (groups.length === 0) return undefined;
  const first = Math.min(...groups.map(({ startsAt }) => startsAt));
  const moved = groups.map((group) => ({ ...group, startsAt: ms(group.startsAt - first) }));
  return { groups: moved, tick: choice.tick };
}

/** How far apart the first and the last group are done. */
export function spreadOf({ groups }: LeadPlan): Ms {
  const ends = groups.map(endOf);
  return ms(Math.max(...ends) - Math.min(...ends));
}
