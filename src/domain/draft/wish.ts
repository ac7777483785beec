import { SESSION_MAX } from '../programme/bounds.ts';
import { weekAt } from '../programme/calendar.ts';
import { dayOf, isMonday } from '../programme/dates.ts';
import type { Plan } from '../programme/plan.ts';
import type { Goal, Group } from '../programme/programme.ts';
import { LIMITS } from '../programme/shape.ts';
import { type Ms, msOfSeconds } from '../units.ts';
import type { CellPlace } from '../workshop/sheet.ts';

/** Where a group should be when the event comes: walk it, walk and run it, or run all of it. */
export const ARRIVALS = ['walk', 'mix', 'run'] as const;
/** Where a group should arrive: walking it, both in turn, or running all of it. */
export type Arrival = (typeof ARRIVALS)[number];

/** A group, what it can do today and where it should arrive. */
export interface WishGroup extends Group {
  /** Longest brisk walk that is comfortable today. */
  readonly walk: Ms;
  /** Longest run that is comfortable today; 0: none. */
  readonly run: Ms;
  readonly arrive: Arrival;
}

/** A session that stays as the leader wrote it. */
export interface Pin {
  readonly at: CellPlace;
  readonly text: string;
  readonly plan: Plan;
}

/** What a leader knows before there is a programme. */
export interface Wish {
  readonly weeks: number;
  /** A Monday. */
  readonly startDate?: string;
  readonly goal: Goal;
  /** How long a session may be, from the first step to the last. */
  readonly session: Ms;
  readonly groups: readonly WishGroup[];
  readonly pins?: readonly Pin[];
}

const minutes = (n: number): Ms => msOfSeconds(n * 60);

/** What can be asked for. The shortest session still has a main set longer than its two ends. */
export const WISH = {
  weeks: { min: 3, max: 16 },
  session: { min: minutes(25), max: SESSION_MAX },
  walk: { min: minutes(5), max: minutes(180) },
  run: { min: minutes(0), max: minutes(120) },
  distanceM: { min: 1000, max: 50_000 },
  groups: { min: 1, max: LIMITS.groups },
} as const;

/** A question of the draft, for saying where an answer does not fit. */
export type WishField =
  | 'weeks'
  | 'session'
  | 'walk'
  | 'run'
  | 'distance'
  | 'groups'
  | 'name'
  | 'start'
  | 'event';

/** Why a wish cannot be drafted. `src/copy/draft.ts` has a sentence for each. */
export interface WishProblem {
  readonly code: 'range' | 'date' | 'monday' | 'before-start' | 'name' | 'name-twice';
  readonly field: WishField;
  /** Of the group, where it is about one. */
  readonly group?: string;
}

const isWithin = (value: number, { min, max }: { min: number; max: number }): boolean =>
  value >= min && value <= max;

function checkDates({ startDate, goal }: Wish): readonly WishProblem[] {
  const problems: WishProblem[] = [];
  const start = startDate === undefined ? undefined : dayOf(startDate);
  const event = goal.date === undefined ? undefined : dayOf(goal.date);
  if (startDate !== undefined && start === undefined)
    problems.push({ code: 'date', field: 'start' });
  if (start !== undefined && !isMonday(start)) problems.push({ code: 'monday', field: 'start' });
  if (goal.date !== undefined && event === undefined)
    problems.push({ code: 'date', field: 'event' });
  if (start !== undefined && event !== undefined && event < start)
    problems.push({ code: 'before-start', field: 'event' });
  return problems;
}

function checkGroup(group: WishGroup, groups: readonly WishGroup[]): readonly WishProblem[] {
  const at = { group: group.id };
  const problems: WishProblem[] = [];
  const name = group.name.trim();
  if (name === '' || [...name].length > LIMITS.name)
    problems.push({ code: 'name', field: 'name', ...at });
  else if (groups.find((other) => other.name.trim() === name) !== group)
    problems.push({ code: 'name-twice', field: 'name', ...at });
  if (!isWithin(group.walk, WISH.walk)) problems.push({ code: 'range', field: 'walk', ...at });
  if (!isWithin(group.run, WISH.run)) problems.push({ code: 'range', field: 'run', ...at });
  return problems;
}

/** Everything in a wish that has to be put right first; nothing when it can be drafted. */
export function checkWish(wish: Wish): readonly WishProblem[] {
  const problems: WishProblem[] = [];
  if (!Number.isInteger(wish.weeks) || !isWithin(wish.weeks, WISH.weeks))
    problems.push({ code: 'range', field: 'weeks' });
  if (!isWithin(wish.session, WISH.session)) problems.push({ code: 'range', field: 'session' });
  if (!isWithin(wish.goal.distanceM, WISH.distanceM))
    problems.push({ code: 'range', field: 'distance' });
  if (!isWithin(wish.groups.length, WISH.groups)) problems.push({ code: 'range', field: 'groups' });
  return [
    ...problems,
    ...checkDates(wish),
    ...wish.groups.flatMap((group) => checkGroup(group, wish.groups)),
  ];
}

/**
 * Weeks (Monday to Sunday) from a start to an event, both of their weeks counted; nothing when
 * either is no date or the event comes first.
 */
export function weeksUntil(startDate: string, eventDate: string): number | undefined {
  const [start, event] = [dayOf(startDate), dayOf(eventDate)];
  if (start === undefined || event === undefined || event < start) return undefined;
  return weekAt(start, event);
}
