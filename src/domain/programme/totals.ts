import type { Ms } from '../units.ts';
import { ms, secondsOf } from '../units.ts';
import type { Item, Plan, Step } from './plan.ts';
import { isRunning, PARTS } from './plan.ts';

/** Whole seconds of a plan. */
export interface PlanTotals {
  /** The whole plan, every recovery included. */
  readonly seconds: number;
  /** The main part. */
  readonly mainSeconds: number;
  /** Jog and faster, anywhere. */
  readonly runSeconds: number;
}

/** Length of steps that pass a test, repeats multiplied and never expanded. */
export function lengthOf(items: readonly Item[], counts: (step: Step) => boolean = () => true): Ms {
  let total = 0;
  for (const item of items) {
    if (item.kind === 'repeat') total += item.count * lengthOf(item.items, counts);
    else if (counts(item)) total += item.duration;
  }
  return ms(total);
}

/** Length of a whole plan. */
export const planLength = (plan: Plan): Ms =>
  ms(PARTS.reduce((sum, part) => sum + lengthOf(plan[part]), 0));

/** The totals that the workshop, the cards and the command line show. */
export function planTotals(plan: Plan): PlanTotals {
  const running = (step: Step): boolean => isRunning(step.activity);
  return {
    seconds: secondsOf(planLength(plan)),
    mainSeconds: secondsOf(lengthOf(plan.main)),
    runSeconds: secondsOf(ms(PARTS.reduce((sum, part) => sum + lengthOf(plan[part], running), 0))),
  };
}

/** When the main set ends, from the start of the session: that is when groups meet again. */
export const mainEnd = (plan: Plan): Ms => ms(lengthOf(plan['warm-up']) + lengthOf(plan.main));
