import type { Activity, Item, Plan, Step } from '../programme/plan.ts';
import { DEFAULT_EFFORT, isRunning, PARTS } from '../programme/plan.ts';
import { lengthOf, mainEnd, planLength } from '../programme/totals.ts';
import type { Ms, Percent } from '../units.ts';
import { ms } from '../units.ts';
import { checkPlan } from './session.ts';
import type { Found } from './warning.ts';

/** What the review needs to know of one session. */
export interface PlanFacts {
  readonly total: Ms;
  readonly main: Ms;
  /** From the start of the session. */
  readonly mainEnd: Ms;
  /** Jog and faster, anywhere. */
  readonly run: Ms;
  /** Jog and faster in the main part. */
  readonly mainRun: Ms;
  /** Any walking, anywhere. */
  readonly walk: Ms;
  readonly brisk: Ms;
  /** The longest running with no walk and no rest in it. */
  readonly stretch: Ms;
  readonly hardest: Percent;
  /** Milliseconds of the main part times their effort in percent. */
  readonly work: number;
  /** What the session alone leaves to be asked. */
  readonly found: readonly Found[];
}

/** Running at the start, at the end and at its longest within some steps. */
interface Runs {
  readonly all: boolean;
  readonly first: number;
  readonly last: number;
  readonly longest: number;
}

const NONE: Runs = { all: true, first: 0, last: 0, longest: 0 };

const joined = (a: Runs, b: Runs): Runs => ({
  all: a.all && b.all,
  first: a.all ? a.first + b.first : a.first,
  last: b.all ? a.last + b.last : b.last,
  longest: Math.max(a.longest, b.longest, a.last + b.first),
});

type Counts = (activity: Activity) => boolean;

function runsOf(item: Item, counts: Counts): Runs {
  if (item.kind === 'step') {
    const run = counts(item.activity) ? item.duration : 0;
    return { all: run > 0, first: run, last: run, longest: run };
  }
  const once = item.items.map((each) => runsOf(each, counts)).reduce(joined, NONE);
  if (once.all) {
    const run = once.longest * item.count;
    return { all: true, first: run, last: run, longest: run };
  }
  return item.count > 1 ? { ...joined(once, once), first: once.first, last: once.last } : once;
}

/**
 * The longest running with no walk and no rest in it, over all parts, or the longest of what counts
 * instead; repeats are not written out.
 */
export const longestStretch = (plan: Plan, counts: Counts = isRunning): Ms =>
  ms(
    PARTS.flatMap((part) => plan[part].map((item) => runsOf(item, counts))).reduce(joined, NONE)
      .longest,
  );

const effortOf = (step: Step): Percent => step.effort ?? DEFAULT_EFFORT[step.activity];

const hardestOf = (items: readonly Item[]): Percent =>
  items.reduce(
    (most, item) => Math.max(most, item.kind === 'step' ? effortOf(item) : hardestOf(item.items)),
    0,
  );

const workOf = (items: readonly Item[]): number =>
  items.reduce(
    (sum, item) =>
      sum +
      (item.kind === 'step' ? item.duration * effortOf(item) : item.count * workOf(item.items)),
    0,
  );

function measured(plan: Plan): PlanFacts {
  const all = PARTS.flatMap((part) => plan[part]);
  const runs = (step: Step): boolean => isRunning(step.activity);
  return {
    total: planLength(plan),
    main: lengthOf(plan.main),
    mainEnd: mainEnd(plan),
    run: lengthOf(all, runs),
    mainRun: lengthOf(plan.main, runs),
    walk: lengthOf(all, (step) => step.activity.endsWith('walk')),
    brisk: lengthOf(all, (step) => step.activity === 'brisk walk'),
    stretch: longestStretch(plan),
    hardest: hardestOf(all),
    work: workOf(plan.main),
    found: checkPlan(plan),
  };
}

const known = new WeakMap<Plan, PlanFacts>();

/** The facts of a plan; the same plan is measured once. */
export function factsOf(plan: Plan): PlanFacts {
  const found = known.get(plan);
  if (found !== undefined) return found;
  const made = measured(plan);
  known.set(plan, made);
  return made;
}
