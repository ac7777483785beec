/** What is typed into the form, before it is known to be right. */
import { pinsOf } from '../../../domain/draft/sheet.ts';
import {
  type Arrival,
  type Pin,
  WISH,
  type Wish,
  type WishGroup,
  weeksUntil,
} from '../../../domain/draft/wish.ts';
import { parsePlan } from '../../../domain/programme/parse.ts';
import { isRunning } from '../../../domain/programme/plan.ts';
import type { Timeline } from '../../../domain/timeline/timeline.ts';
import { type Ms, ms } from '../../../domain/units.ts';
import { groupId } from '../../../domain/workshop/ids.ts';
import { cellsOf } from '../../../domain/workshop/places.ts';
import type { Sheet, SheetWeek } from '../../../domain/workshop/sheet.ts';
import { timelineOf } from '../../parts/plans.ts';

/** A group's answers. `walk` and `run`: the longest of today, in minutes. */
export interface GroupAnswers {
  readonly id: string;
  readonly name: string;
  readonly for: string;
  readonly walk: string;
  readonly run: string;
  readonly arrive: Arrival;
}

/** All answers as text. `session` in minutes, dates in ISO 8601 or empty. */
export interface Answers {
  readonly weeks: string;
  readonly startDate: string;
  readonly eventDate: string;
  readonly distanceKm: string;
  readonly session: string;
  readonly groups: readonly GroupAnswers[];
}

const MINUTE = 60_000;
const SESSION = '45';
const WEEKS = 6;

/** The sessions of a group in a week that can be read. */
const timelinesOf = (week: SheetWeek | undefined, group: string): readonly Timeline[] =>
  cellsOf(week, group).flatMap(({ text, good }) => {
    const plan = parsePlan(text);
    if (plan.ok) return [timelineOf(plan.value)];
    const last = good === undefined ? undefined : parsePlan(good);
    return last?.ok ? [timelineOf(last.value)] : [];
  });

/** The longest time on end in which something holds, in minutes. */
function longestOf(
  timelines: readonly Timeline[],
  counts: (segment: Timeline['segments'][number]) => boolean,
): number {
  let longest = 0;
  for (const { segments } of timelines) {
    let now = 0;
    for (const segment of segments) {
      now = counts(segment) ? now + segment.end - segment.start : 0;
      longest = Math.max(longest, now);
    }
  }
  return longest / MINUTE;
}

const written = (minutes: number): string => String(Math.round(minutes * 2) / 2);

/** Where a group stands by what is written for it; nothing where nothing is. */
function groupAnswers(sheet: Sheet, n: number, isWritten: boolean): GroupAnswers {
  const group = sheet.groups[n] ?? { id: '', name: '', for: '' };
  const all = sheet.weeks.map((week) => timelinesOf(week, group.id));
  const first = isWritten ? (all[0] ?? []) : [];
  const longestRun = longestOf(all.flat(), ({ activity }) => isRunning(activity));
  const isLast = n === sheet.groups.length - 1;
  const guess: Arrival = n === 0 ? 'walk' : isLast ? 'run' : 'mix';
  const byPlans: Arrival = longestRun === 0 ? 'walk' : longestRun >= 15 ? 'run' : 'mix';
  return {
    ...group,
    walk: first.length === 0 ? '' : written(longestOf(first, () => true)),
    run: first.length === 0 ? '' : written(longestOf(first, ({ activity }) => isRunning(activity))),
    arrive: isWritten && all.flat().length > 0 ? byPlans : guess,
  };
}

/** Answers as the open sheet suggests them; what it does not tell is left to be asked. */
export function answersOf(sheet: Sheet): Answers {
  const { startDate = '', goal, weeks } = sheet;
  const all = weeks.flatMap((week) => sheet.groups.flatMap(({ id }) => timelinesOf(week, id)));
  const longest = Math.max(0, ...all.map(({ total }) => total)) / MINUTE;
  // A few sessions in an empty table say nothing of the whole.
  const isWritten = all.length * 2 >= weeks.length * sheet.groups.length;
  const count = isWritten ? weeks.length : (weeksUntil(startDate, goal.date ?? '') ?? WEEKS);
  return {
    weeks: String(Math.min(WISH.weeks.max, Math.max(WISH.weeks.min, count))),
    startDate,
    eventDate: goal.date ?? '',
    distanceKm: String(goal.distanceM / 1000),
    session: isWritten ? String(Math.ceil(longest / 5) * 5) : SESSION,
    groups: sheet.groups.map((_, n) => groupAnswers(sheet, n, isWritten)),
  };
}

/** A number as it is written anywhere; what is none does not fit any range. */
const numberOf = (text: string): number =>
  /^\s*\d+([.,]\d+)?\s*$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;

const minutesOf = (text: string): Ms => {
  const minutes = numberOf(text);
  return Number.isNaN(minutes) ? (Number.NaN as Ms) : ms(minutes * MINUTE);
};

const wishGroup = ({ walk, run, ...group }: GroupAnswers): WishGroup => ({
  ...group,
  walk: minutesOf(walk),
  run: minutesOf(run),
});

const isPlaced = (wish: Wish, { at }: Pin): boolean =>
  at.week < wish.weeks && wish.groups.some(({ id }) => id === at.group);

/** What is wished for, with what is pinned in the sheet and has a place in it. */
export function wishOf(answers: Answers, sheet: Sheet): Wish {
  const { startDate, eventDate, groups } = answers;
  const { date: _, ...goal } = sheet.goal;
  const wish: Wish = {
    weeks: numberOf(answers.weeks),
    session: minutesOf(answers.session),
    ...(startDate === '' ? {} : { startDate }),
    goal: {
      ...goal,
      distanceM: Math.round(numberOf(answers.distanceKm) * 1000),
      ...(eventDate === '' ? {} : { date: eventDate }),
    },
    groups: groups.map(wishGroup),
  };
  return { ...wish, pins: pinsOf(sheet).filter((pin) => isPlaced(wish, pin)) };
}

/** A group more, behind the others. */
export function withGroup(answers: Answers, name: string): Answers {
  const taken = answers.groups.map(({ id }) => id);
  const group = {
    id: groupId(name, taken),
    name,
    for: '',
    walk: '',
    run: '',
    arrive: 'run',
  } as const;
  return { ...answers, groups: [...answers.groups, group] };
}
