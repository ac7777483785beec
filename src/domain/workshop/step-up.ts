import { COUNT_MAX, SESSION_MAX, STEP_MIN, TEXT_MAX } from '../programme/bounds.ts';
import { formatPlan } from '../programme/format.ts';
import type { Item, Plan, Repeat, Step } from '../programme/plan.ts';
import { DEFAULT_EFFORT } from '../programme/plan.ts';
import { planLength } from '../programme/totals.ts';
import type { Ms } from '../units.ts';
import { ms, msOfSeconds } from '../units.ts';
import type { StepUp } from './edit.ts';
import { stepsOf } from './pieces.ts';

/** The voice says longer durations to five seconds, and a runner cannot tell less apart. */
const SAYABLE: Ms = msOfSeconds(5);

const effortOf = (step: Step): number => step.effort ?? DEFAULT_EFFORT[step.activity];

const isRepeat = (item: Item): item is Repeat => item.kind === 'repeat';

/** The steps that a step up is about: those inside the sets, or the main part where none are. */
const core = ({ main }: Plan): readonly Step[] => {
  const sets = main.filter(isRepeat);
  return stepsOf(sets.length > 0 ? sets : main);
};

const within = (value: number, min: number, max: number): number =>
  Math.min(max, Math.max(min, value));

function longer(step: Step, by: number): Step {
  const length = Math.round((step.duration + by) / SAYABLE) * SAYABLE;
  return { ...step, duration: ms(within(length, STEP_MIN, SESSION_MAX)) };
}

/** Every step of `chosen`, changed, wherever it stands. */
const withSteps = (
  items: readonly Item[],
  chosen: ReadonlySet<Step>,
  change: (step: Step) => Step,
): readonly Item[] =>
  items.map((item) => {
    if (item.kind === 'step') return chosen.has(item) ? change(item) : item;
    return { ...item, items: withSteps(item.items, chosen, change) };
  });

/** Sets are the innermost repeats; only those with the hardest steps in them grow. */
const moreSets = (
  items: readonly Item[],
  hardest: ReadonlySet<Step>,
  by: number,
): readonly Item[] =>
  items.map((item) => {
    if (item.kind === 'step') return item;
    if (item.items.some(isRepeat)) return { ...item, items: moreSets(item.items, hardest, by) };
    const isCore = item.items.some((step) => step.kind === 'step' && hardest.has(step));
    return isCore ? { ...item, count: within(item.count + by, 1, COUNT_MAX) } : item;
  });

/** The steps of the highest effort inside the main part's sets, or of the main part without sets. */
export function hardStepsOf(plan: Plan): readonly Step[] {
  const steps = core(plan);
  const top = Math.max(...steps.map(effortOf));
  return steps.filter((each) => effortOf(each) === top);
}

function grown(plan: Plan, step: StepUp, times: number): Plan {
  if (step.kind === 'same' || step.by * times === 0) return plan;
  const hardest = new Set(hardStepsOf(plan));
  if (step.kind === 'sets') return { ...plan, main: moreSets(plan.main, hardest, step.by * times) };
  const chosen =
    step.kind === 'hard' ? hardest : new Set(core(plan).filter((each) => !hardest.has(each)));
  const change = (each: Step): Step => longer(each, step.by * times);
  return { ...plan, main: withSteps(plan.main, chosen, change) };
}

const fits = (plan: Plan): boolean =>
  planLength(plan) <= SESSION_MAX && [...formatPlan(plan)].length <= TEXT_MAX;

/**
 * A plan with a step up applied some times over. Hard steps are those of the highest effort inside
 * the main part's sets, or of the whole main part where it has none; easy ones are the others
 * there. Lengths come out in whole 5 seconds. A step, a count or a session that has reached its
 * bound stays there.
 */
export function steppedUp(plan: Plan, step: StepUp, times: number): Plan {
  for (let n = times; n > 0; n -= 1) {
    const next = grown(plan, step, n);
    if (fits(next)) return next;
  }
  return plan;
}
