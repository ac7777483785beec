import { pathText } from '../programme/path.ts';
import type { Plan } from '../programme/plan.ts';
import { factsOf } from '../review/facts.ts';
import { type Outline, sessionsIn } from '../review/outline.ts';
import { candidatesOf } from './candidates.ts';
import { boardLimit } from './limits.ts';
import { newIn, type SessionAt, withPlan } from './stretch.ts';

/** The most that a week asked for in one session. */
export interface Most {
  /** As in `PlanFacts`. */
  readonly work: number;
  /** Milliseconds. */
  readonly stretch: number;
}

/** Gentler than written in every way, and no more than half of it taken away. */
function isGentler(next: Plan, written: Plan): boolean {
  const [now, before] = [factsOf(next), factsOf(written)];
  return (
    now.work < before.work &&
    now.stretch <= before.stretch &&
    now.total <= before.total &&
    now.hardest <= before.hardest &&
    now.work * 2 >= before.work
  );
}

/** Less than what was too hard, and no longer a run. */
const isBelow = (plan: Plan, most: Most): boolean =>
  factsOf(plan).work < most.work && factsOf(plan).stretch <= most.stretch;

function gentlerPlans(plan: Plan): readonly Plan[] {
  const steps = Array.from({ length: boardLimit('mostSteps') }, (_, n) => -(n + 1));
  return steps
    .flatMap((times) => candidatesOf(plan, times))
    .filter((next) => isGentler(next, plan));
}

/**
 * A session gentler than it is written, by as few steps as bring it below the week that was too
 * hard: it never goes further down than that takes, and always one step. Of those, one that groups
 * can still do together, where there is one.
 *
 * @param most of the week that was looked at
 * @returns nothing where nothing gentler can be made of it
 */
export function easedAt(outline: Outline, at: SessionAt, most: Most): Plan | undefined {
  const week = outline.weeks[at.week];
  const plan = week && sessionsIn(week, at.group)[at.session]?.plan;
  if (plan === undefined) return undefined;
  const all = gentlerPlans(plan);
  const below = all.filter((next) => isBelow(next, most));
  // What a review then asks of the weeks behind it is for the leader to see there.
  const here = pathText(['weeks', at.week]);
  const fits = (next: Plan): boolean =>
    newIn(outline, withPlan(outline, at, next)).every(({ path }) => !path.startsWith(here));
  return below.find(fits) ?? below[0] ?? gentlestOf(all);
}

const gentlestOf = (plans: readonly Plan[]): Plan | undefined =>
  plans.reduce<Plan | undefined>(
    (least, plan) => (least && factsOf(least).work <= factsOf(plan).work ? least : plan),
    undefined,
  );
