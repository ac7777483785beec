import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatPlan } from '../../../src/domain/programme/format.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import type { Plan } from '../../../src/domain/programme/plan.ts';
import { tidy } from '../../../src/domain/programme/tidy.ts';
import { planTotals } from '../../../src/domain/programme/totals.ts';
import { plan, written } from './arbitraries.ts';

const read = (text: string): Plan => {
  const result = parsePlan(text);
  if (!result.ok) throw new Error(`${text}: ${JSON.stringify(result.error)}`);
  return result.value;
};

describe('formatting a session', () => {
  it('PLAN-5 parsing what was formatted gives the same plan, for any plan', () => {
    fc.assert(
      fc.property(plan, (made) => {
        const text = formatPlan(made);
        expect(read(text)).toEqual(made);
        expect(formatPlan(read(text))).toBe(text);
      }),
      { numRuns: 300 },
    );
  });

  it('PLAN-5 however it was spelled, its tidy text is the same plan, and stays as it is', () => {
    fc.assert(
      fc.property(written, ({ text }) => {
        const made = read(text);
        const again = formatPlan(made);
        expect(read(again)).toEqual(made);
        expect(formatPlan(read(again))).toBe(again);
        expect(planTotals(read(again))).toEqual(planTotals(made));
      }),
      { numRuns: 300 },
    );
  });

  it('PLAN-5 a plan that fills the longest text is written so that it still fits', () => {
    const tight = Array.from({ length: 249 }, (_, n) => (n % 2 ? '35"walk' : '5"jog@9%')).join(',');
    const longest = `main:${tight}`.slice(0, 2000).replace(/,[^,]*$/, '');
    expect(longest.length).toBeGreaterThan(1980);
    const made = read(longest);
    const text = formatPlan(made);
    expect(text.length).toBeLessThanOrEqual(longest.length);
    expect(read(text)).toEqual(made);
  });

  it('PLAN-5 labels are written only where the parts would be read differently', () => {
    expect(tidy('warm-up: 5 min walk; main: 10 min run; cool-down: 5 min walk')).toEqual({
      ok: true,
      value: '5 min walk; 10 min run; 5 min walk',
    });
    expect(tidy('main: 5 min walk, 10 min run\ncool down: 5 min walk')).toEqual({
      ok: true,
      value: 'main: 5 min walk; 10 min run; cool-down: 5 min walk',
    });
  });

  it('PLAN-5 a note from elsewhere that holds a quote is written so that it ends where it should', () => {
    const [part] = read('5 min walk "Tall"').main;
    if (part?.kind !== 'step') throw new Error('a step');
    const text = formatPlan({
      'warm-up': [],
      main: [{ ...part, note: 'Say "heron" aloud' }],
      'cool-down': [],
    });
    expect(read(text).main).toEqual([{ ...part, note: "Say 'heron' aloud" }]);
  });

  it('PLAN-6 tidy says the same session in one way', () => {
    expect(
      tidy(
        'WARM-UP: 5’ easy walk; Main Set: 3 × (2’30” run “Tall”, 90 sec WALK); cool down: walk for 5 min',
      ),
    ).toEqual({
      ok: true,
      value: '5 min easy walk; 3 x (2 min 30 s run "Tall", 1 min 30 s walk); 5 min walk',
    });
  });

  it('PLAN-6 tidy refuses what cannot be parsed, with its place', () => {
    expect(tidy('5 min walk; 5 m run')).toMatchObject({
      ok: false,
      error: { code: 'unit-m', place: { line: 1, column: 13 } },
    });
  });
});
