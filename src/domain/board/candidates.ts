import type { Plan } from '../programme/plan.ts';
import { type Ms, ms, msOfSeconds } from '../units.ts';
import { hardStepsOf, steppedUp } from '../workshop/step-up.ts';
import { boardLimit } from './limits.ts';

/** Lengths between which people can tell, and that are easily said. */
const QUARTER: Ms = msOfSeconds(15);

/** A share of the shortest of the hard steps, in whole quarters of a minute. */
function stepOf(plan: Plan): Ms {
  const shortest = Math.min(...hardStepsOf(plan).map(({ duration }) => duration));
  const share = (shortest * boardLimit('step')) / 100;
  return ms(Math.max(1, Math.round(share / QUARTER)) * QUARTER);
}

/**
 * A plan some steps harder, or below 0 gentler: by sets, by the length of its hard steps with the
 * others as much shorter or longer, and by the length of its hard steps alone.
 */
export function candidatesOf(plan: Plan, times: number): readonly Plan[] {
  const by = ms(stepOf(plan) * times);
  const hard = steppedUp(plan, { kind: 'hard', by }, 1);
  return [
    steppedUp(plan, { kind: 'sets', by: times }, 1),
    steppedUp(hard, { kind: 'easy', by: ms(-by) }, 1),
    hard,
  ];
}
