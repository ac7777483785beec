import { formatPlan } from '../programme/format.ts';
import type { Plan } from '../programme/plan.ts';
import { mainEnd } from '../programme/totals.ts';
import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import { type Ms, msOfSeconds, type Percent } from '../units.ts';
import { type Answer, answerFor } from './answer.ts';
import { msOfHalf } from './bounds.ts';
import { type Change, changeOf } from './change.ts';
import type { WeekKind } from './ground.ts';
import { planOf } from './option.ts';
import { type Solution, solve } from './solve.ts';
import { checkWish, type Wish, type WishGroup, type WishProblem } from './wish.ts';

/** What a week is about. `src/copy/draft.ts` has a line for each. */
export const FOCUSES = [
  'rhythm',
  'talk',
  'same-pace',
  'real-walks',
  'tall',
  'something-left',
  'patience',
  'longest',
  'event',
] as const;
/** What a week is about. */
export type Focus = (typeof FOCUSES)[number];

/** A session that is proposed, with what it changes from the week before. */
export interface DraftCell {
  readonly text: string;
  readonly plan: Plan;
  readonly change: Change;
  /** Its main set does not end within 30 s of the others, because a session is pinned. */
  readonly apart?: true;
}

/** A week that is proposed, for all groups. */
export interface DraftWeek {
  readonly kind: WeekKind;
  readonly focus: Focus;
  readonly effort: Percent;
  readonly timesPerWeek: { readonly min: number; readonly max: number };
  /** The main set that all groups share. */
  readonly main: Ms;
  /** By group id: the first session of the week. */
  readonly cells: Readonly<Record<string, DraftCell>>;
}

/** A whole programme that is proposed, and who arrives by it. */
export interface Draft {
  readonly weeks: readonly DraftWeek[];
  /** In the order of the groups. */
  readonly answers: readonly Answer[];
}

/** Groups that end further apart than this wait for each other. Common practice, no source. */
const TOGETHER: Ms = msOfSeconds(30);
/** Those who can run two minutes run; others jog. Common practice, no source. */
const RUNS_FROM: Ms = msOfSeconds(120);
/** Targets rise from 50 to 60 % and ease off. Common practice, no source. */
const EFFORT = { first: 50, last: 60, step: 5 } as const;

/** What the harder part of a group's sets is. */
export type HardActivity = 'brisk walk' | 'easy jog' | 'run';

/** What a group does in the harder part of a set. */
export function hardActivity({ arrive, run }: WishGroup): HardActivity {
  if (arrive === 'walk') return 'brisk walk';
  return arrive === 'run' && run >= RUNS_FROM ? 'run' : 'easy jog';
}

function focusOf(week: number, weeks: number): Focus {
  if (week === weeks - 1) return 'event';
  if (week === weeks - 2) return 'longest';
  const others = FOCUSES.slice(0, -2);
  return week < others.length ? (others[week] as Focus) : (others[1 + (week % 6)] as Focus);
}

function effortOf(week: number, weeks: number, kind: WeekKind): Percent {
  if (kind !== 'full' || weeks < 3) return EFFORT.first;
  const share = week / (weeks - 2);
  const steps = Math.round((share * (EFFORT.last - EFFORT.first)) / EFFORT.step);
  return EFFORT.first + steps * EFFORT.step;
}

function cellsOf(wish: Wish, { ground, climbs }: Solution, week: number) {
  const kind = ground.kinds[week] ?? 'full';
  const cells = wish.groups.flatMap((group, g): [string, Omit<DraftCell, 'apart'>][] => {
    const options = climbs[g]?.options ?? [];
    const option = options[week];
    if (option === undefined) return [];
    const change = changeOf(options[week - 1], option, kind);
    const pin = wish.pins?.find(
      ({ at }) => at.week === week && at.session === 0 && at.group === group.id,
    );
    if (pin !== undefined) return [[group.id, { text: pin.text, plan: pin.plan, change }]];
    const plan = planOf(option, hardActivity(group));
    return [[group.id, { text: formatPlan(plan), plan, change }]];
  });
  const ends = cells.map(([, { plan }]) => mainEnd(plan));
  return Object.fromEntries(
    cells.map(([id, cell]) => {
      const end = mainEnd(cell.plan);
      const isApart = ends.some((other) => Math.abs(other - end) > TOGETHER);
      return [id, isApart ? { ...cell, apart: true as const } : cell];
    }),
  );
}

const weekOf = (wish: Wish, solution: Solution, week: number): DraftWeek => {
  const kind = solution.ground.kinds[week] ?? 'full';
  return {
    kind,
    focus: focusOf(week, wish.weeks),
    effort: effortOf(week, wish.weeks, kind),
    timesPerWeek: { min: 2, max: kind === 'light' ? 2 : 3 },
    main: msOfHalf(solution.ground.mains[week] ?? 0),
    cells: cellsOf(wish, solution, week),
  };
};

/**
 * Proposes the session of every week for every group, and says which groups arrive. What a draft
 * never does stands in bounds.ts, what makes one better than another in objective.ts. The same wish
 * always gives the same draft.
 *
 * @returns what has to be put right in the wish; `no-way` when pinned sessions leave none
 */
export function draftProgramme(
  wish: Wish,
): Result<Draft, readonly (WishProblem | { readonly code: 'no-way' })[]> {
  const problems = checkWish(wish);
  if (problems.length > 0) return fail(problems);
  const solution = solve(wish);
  if (solution === undefined) return fail([{ code: 'no-way' }]);
  return ok({
    weeks: Array.from({ length: wish.weeks }, (_, week) => weekOf(wish, solution, week)),
    answers: wish.groups.flatMap((group, g) => {
      const climb = solution.climbs[g];
      return climb === undefined ? [] : [answerFor(wish, group, climb)];
    }),
  });
}
