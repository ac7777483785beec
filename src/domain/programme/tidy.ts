import type { Result } from '../result.ts';
import { ok } from '../result.ts';
import { formatPlan } from './format.ts';
import { parsePlan } from './parse.ts';
import type { PlanProblem } from './problem.ts';

/** The text as the formatter writes it: what *tidy* offers. */
export function tidy(text: string): Result<string, PlanProblem> {
  const plan = parsePlan(text);
  return plan.ok ? ok(formatPlan(plan.value)) : plan;
}
