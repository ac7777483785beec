import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { planTotals } from '../../../src/domain/programme/totals.ts';
import { COACH_PLANS, HANDBOOK, SAME_SESSION } from '../../fixtures/plans/coach-plans.ts';

describe('sessions as coaches write them', () => {
  it.each([...HANDBOOK, ...COACH_PLANS])('PLAN-1 %s (%s)', (text, _hand, seconds, main, run) => {
    const plan = parsePlan(text);
    expect(plan.ok && planTotals(plan.value)).toEqual({
      seconds,
      mainSeconds: main,
      runSeconds: run,
    });
  });

  it.each(SAME_SESSION)('PLAN-2 %s is the same session as all the others', (text) => {
    const plan = parsePlan(text);
    const first = parsePlan(SAME_SESSION[0] ?? '');
    expect(plan).toEqual(first);
    expect(plan.ok && planTotals(plan.value)).toEqual({
      seconds: 1860,
      mainSeconds: 1260,
      runSeconds: 840,
    });
  });

  it('PLAN-1 the table has at least 60 ways', () => {
    const texts = [...HANDBOOK, ...COACH_PLANS].map(([text]) => text).concat(SAME_SESSION);
    expect(new Set(texts).size).toBeGreaterThanOrEqual(60);
  });
});
