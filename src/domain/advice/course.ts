import type { Decision, Pause } from '../log/following.ts';
import { type Day, mondayOf } from '../programme/calendar.ts';
import { idleBetween, pausedDays, wasIll } from './away.ts';
import { type Base, basesOf, startOf, weekAt } from './bases.ts';
import { dayIn } from './days.ts';
import { rule } from './rules.ts';
import { counts, type Done, enoughOf, inOrder, type Situation } from './situation.ts';

/** Where to come back in after days without a session. */
export interface ReEntry {
  readonly week: number;
  /** Whole days without a session. */
  readonly days: number;
  /** How many weeks back from where they would go on. */
  readonly back: number;
  readonly why: Pause['why'] | 'gap';
}

/** A decision with its day, its week within the programme. */
export type DayDecision = Decision & { readonly day: Day };

/** How the weeks of a programme fall on this person's calendar. */
export interface Course {
  readonly today: Day;
  /** Monday of today's week. */
  readonly monday: Day;
  /** Monday of week 1, by the leader's dates, the person's own, or their first session. */
  readonly start?: Day;
  /** In order; the last is the one that holds. */
  readonly bases: readonly Base[];
  /** Sessions of this programme that count, in order, none after today. */
  readonly done: readonly Done[];
  readonly reEntry?: ReEntry;
  /** Nothing was done yet, and the calendar's week is past the first: they begin at week 1. */
  readonly late?: { readonly week: number };
  /** The pause that today lies in. */
  readonly pause?: Pause;
  readonly lastDecision?: DayDecision;
  /** The first that was decided for a day to come. */
  readonly upcoming?: DayDecision;
}

/** Entries of a programme that count, up to a day, in order. */
const doneUntil = ({ programme, entries }: Situation, until: Day): readonly Done[] =>
  inOrder(entries).filter(
    ({ day, entry }) =>
      day <= until && entry.programme.id === programme.id && counts(programme, entry),
  );

/** In order of their days; later ones of a day hold. */
const decisionsOf = ({ programme, following }: Situation): readonly DayDecision[] =>
  (following?.decisions ?? [])
    .flatMap((decision): DayDecision[] => {
      const day = dayIn(decision.on);
      const week = Math.min(programme.weeks.length, Math.max(1, Math.round(decision.week) || 1));
      return day === undefined ? [] : [{ ...decision, week, day }];
    })
    .sort((a, b) => a.day - b.day);

/**
 * The week to come back in. Up to seven days away change nothing; after that a week back for every
 * seven more, begun or whole; an illness of three days or more takes one further. Never before
 * week 1, never past where they would go on.
 */
export function reEntryWeek(next: number, days: number, isIll: boolean): number {
  const over = Math.max(0, days - rule('away'));
  const back = Math.ceil(over / rule('backPer')) + (isIll ? 1 : 0);
  return Math.max(1, next - back);
}

function isEventWeek({ programme }: Situation, monday: Day): boolean {
  const event = dayIn(programme.goal.date);
  return event !== undefined && mondayOf(event) === monday;
}

function reEntryOf(
  situation: Situation,
  { bases, done, lastDecision, monday, today }: Omit<Course, 'reEntry'>,
): ReEntry | undefined {
  const last = done.at(-1);
  const here = weekAt(bases, monday);
  if (last === undefined || here === undefined) return undefined;
  const since = Math.max(last.day, lastDecision?.day ?? last.day);
  const pauses = situation.following?.pauses ?? [];
  const isIll = wasIll(pauses, since, today);
  const days = idleBetween(since, today);
  if (!isIll && days <= rule(isEventWeek(situation, monday) ? 'awayAtEvent' : 'away'))
    return undefined;
  const goOn =
    lastDecision !== undefined && lastDecision.day > last.day
      ? lastDecision.week
      : weekAfter(situation, bases, done);
  if (goOn > situation.programme.weeks.length) return undefined;
  const next = Math.min(here, goOn);
  const week = reEntryWeek(next, days, isIll);
  const pause = pauses.findLast((each) => pausedDays(each, since, today) > 0);
  return { week, days, back: next - week, why: pause?.why ?? 'gap' };
}

/** Where somebody would go on: the week of their last session, or the one after when it was enough. */
function weekAfter(
  { programme, group }: Situation,
  bases: readonly Base[],
  done: readonly Done[],
): number {
  const reached = done.at(-1)?.entry.week ?? 1;
  const from = bases.at(-1)?.from ?? Number.NEGATIVE_INFINITY;
  const times = done.filter(({ day, entry }) => entry.week === reached && day >= from).length;
  return times >= enoughOf(programme.weeks[reached - 1], group) ? reached + 1 : reached;
}

/** How the weeks fall for this person, from dates, decisions, pauses and sessions. */
export function courseOf(situation: Situation): Course {
  const today = dayIn(situation.today) ?? 0;
  const monday = mondayOf(today);
  const done = doneUntil(situation, today);
  const start = startOf(situation, done);
  const all = decisionsOf(situation);
  const decisions = all.filter(({ day }) => day <= today);
  const upcoming = all.find(({ day }) => day > today);
  const bases = basesOf(start, decisions, done, situation);
  const pause = situation.following?.pauses.findLast(
    (each) => pausedDays(each, today - 1, today) > 0,
  );
  const lastDecision = decisions.at(-1);
  const course = {
    today,
    monday,
    bases,
    done,
    ...(start && { start: start.monday }),
    ...(pause && { pause }),
    ...(lastDecision && { lastDecision }),
    ...(upcoming && { upcoming }),
  };
  const here = weekAt(bases, monday) ?? 1;
  const isNew = done.length === 0 && lastDecision === undefined;
  if (isNew && here > 1)
    return {
      ...course,
      bases: [...bases, baseAt(course, 1)],
      // Behind dates of their own nobody is late.
      ...(situation.following?.startedOn === undefined && { late: { week: here } }),
    };
  const reEntry = reEntryOf(situation, course);
  if (reEntry === undefined) return course;
  return { ...course, reEntry, bases: [...bases, baseAt(course, reEntry.week)] };
}

const baseAt = ({ monday, today }: Pick<Course, 'monday' | 'today'>, week: number): Base => ({
  monday,
  week,
  why: 're-entry',
  from: today,
});
