import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPlace, planProblem } from '../../../src/copy/plan.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { PLAN_CODES } from '../../../src/domain/programme/problem.ts';
import { MISTAKES } from '../../fixtures/plans/mistakes.ts';
import { roughText } from './arbitraries.ts';

describe('mistakes in a session', () => {
  it.each(MISTAKES)('PLAN-8 %j is told as %s', (text, code, [line, column, length], sentence) => {
    const plan = parsePlan(text);
    if (plan.ok) throw new Error('this was read as a plan');
    expect(plan.error.code).toBe(code);
    expect(plan.error.place).toMatchObject({ line, column, length });
    expect(planProblem(plan.error)).toBe(sentence);
    expect(planPlace(plan.error)).toBe(`line ${line}, column ${column}`);
  });

  it('PLAN-8 what was found is what stands at the place, as it was typed', () => {
    for (const [text, code] of MISTAKES) {
      const plan = parsePlan(text);
      if (plan.ok || ['session-long', 'text-long', 'bad-character', 'empty'].includes(code))
        continue;
      const { offset, length } = plan.error.place;
      expect(plan.error.found).toBe(text.slice(offset, offset + length));
    }
  });

  it('PLAN-8 of two mistakes the first in the text is told', () => {
    const plan = parsePlan('5 min walk;\n  10 min wlak; 5 m run');
    expect(plan).toMatchObject({ ok: false, error: { code: 'unknown-activity', found: 'wlak' } });
    if (!plan.ok) expect(plan.error.place).toEqual({ line: 2, column: 10, offset: 21, length: 4 });
  });

  it('PLAN-8 columns count what a person sees, offsets what a text field counts', () => {
    const plan = parsePlan('5 min walk "😀"; 5 m walk');
    expect(plan.ok ? null : plan.error.place).toEqual({
      line: 1,
      column: 17,
      offset: 17,
      length: 3,
    });
  });

  it('PLAN-9 both readings are shown with their totals, worked by hand', () => {
    // 6 x (2 + 1) = 18 and 6 x 2 + 1 = 13: common practice, no source.
    const plan = parsePlan('5 min walk; 6 x 2 min run / 1 min walk; 5 min walk');
    expect(plan.ok ? null : plan.error).toMatchObject({
      code: 'needs-brackets',
      found: '6 x 2 min run / 1 min walk',
      detail: {
        together: '6 x (2 min run, 1 min walk)',
        togetherTotal: '18 min',
        apart: '6 x 2 min run; 1 min walk',
        apartTotal: '13 min',
      },
    });
  });

  it('PLAN-9 each reading that is shown can be written as it stands', () => {
    for (const [text, code] of MISTAKES) {
      const plan = parsePlan(text);
      if (plan.ok || code !== 'needs-brackets') continue;
      expect(parsePlan(String(plan.error.detail?.together)).ok).toBe(true);
      expect(parsePlan(String(plan.error.detail?.apart)).ok).toBe(true);
    }
  });

  it('PLAN-10 the table shows every code', () => {
    const shown = new Set(MISTAKES.map(([, code]) => code));
    expect(PLAN_CODES.filter((code) => !shown.has(code))).toEqual(['text-long']);
    const long = parsePlan(`5 min walk${' '.repeat(1991)}`);
    expect(long.ok ? '' : planProblem(long.error)).toBe(
      'This has 2001 characters. 2000 is the most for one session.',
    );
  });

  it('PLAN-10 no text makes the parser throw, and the place lies within it', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 80 }), roughText), (text) => {
        const plan = parsePlan(text);
        if (plan.ok) return;
        const { offset, length, line, column } = plan.error.place;
        expect(offset).toBeGreaterThanOrEqual(0);
        expect(offset + length).toBeLessThanOrEqual(text.length);
        expect(line).toBeLessThanOrEqual(text.split(/\r\n|[\n\r\u0085\u2028\u2029]/).length);
        expect(column).toBeGreaterThanOrEqual(1);
        expect(planProblem(plan.error).length).toBeGreaterThan(10);
      }),
      { numRuns: 500 },
    );
  });

  it('PLAN-10 text made to exhaust a parser is answered', () => {
    const hostile = [
      '(',
      '2x(',
      '3x',
      '5 min walk(',
      '((1 s run),',
      '"',
      '@',
      '6 x 1 min run/',
      'a b ',
      '1:',
      '😀',
    ];
    for (const piece of hostile) {
      const text = piece.repeat(Math.floor(2000 / piece.length));
      expect(parsePlan(text).ok).toBe(false);
      expect(parsePlan(piece.repeat(100_000)).ok).toBe(false);
    }
  });
});
