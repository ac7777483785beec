/** Numbers of others that the review has to agree with. */
import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { metresOf } from '../../../src/domain/review/arrival.ts';
import { factsOf } from '../../../src/domain/review/facts.ts';
import { bandOf } from '../../../src/domain/review/growth.ts';
import { REVIEW_LIMITS } from '../../../src/domain/review/limits.ts';
import { around, found, outlineOf, planOf } from './outlines.ts';

const minutes = (value: number): number => value / 60_000;

describe('the review against published numbers', () => {
  it('REV-4 growth falls into the bands of Frandsen 2025', () => {
    // Frandsen et al. 2025, Br J Sports Med 59(17):1203-10: up to 10 %, to 30 %, to 100 %, above.
    // By distance there; minutes are our extrapolation.
    expect([22, 23, 26, 27, 40, 41].map((now) => bandOf(20 * 60_000, now * 60_000))).toEqual([
      'as before',
      'small',
      'small',
      'moderate',
      'moderate',
      'large',
    ]);
  });

  it('REV-3 ten per cent a week is no jump, though it doubles in eight weeks', () => {
    // Buist et al. 2008 graded by the 10 % rule; 1.1^8 = 2.1436.
    const weeks = Array.from({ length: 9 }, (_, n) => 20 * 60 * 1.1 ** n).map(Math.round);
    expect((weeks[8] ?? 0) / (weeks[0] ?? 1)).toBeCloseTo(2.1436, 2);
    const outline = outlineOf({ wren: weeks.map((seconds) => `${seconds} s walk`) });
    expect(found(outline).filter((text) => /longer/.test(text))).toEqual([]);
    const run = outlineOf({ wren: weeks.map((seconds) => `${seconds} s run`) });
    expect(found(run).filter((text) => /longer/.test(text))).toEqual([]);
  });

  it('REV-3 from 60 to 78 min is 30 %, where Nielsen 2014 begins', () => {
    const outline = (now: string) => outlineOf({ wren: ['50 min walk', `${now} walk`] });
    expect(found(outline('1 h 8 min')).some((text) => /session-longer/.test(text))).toBe(false);
    expect(found(outline('1:08:01')).some((text) => /session-longer/.test(text))).toBe(true);
  });

  it.each([
    // Common practice, no source: total = warm-up + sets x (run + walk) + cool-down.
    ['5 min walk; 6 x (2 min run, 1 min walk); 5 min walk', 28, 12, 2],
    ['5 min walk; 5 x (3 min run, 2 min walk); 5 min walk', 35, 15, 3],
    ['6 min walk; 4 x (4 min run, 1:30 walk); 4 min walk', 32, 16, 4],
  ])('REV-9 the facts of %s', (text, total, run, stretch) => {
    const facts = factsOf(planOf(text));
    expect([facts.total, facts.run, facts.stretch].map(minutes)).toEqual([total, run, stretch]);
    expect(facts.mainRun).toBe(facts.run);
  });

  it('REV-9 two of three minutes run are two thirds of the main part', () => {
    const facts = factsOf(planOf('5 min walk; 6 x (2 min run, 1 min walk); 5 min walk'));
    expect((facts.mainRun / facts.main) * 100).toBeCloseTo(66.7, 1);
  });

  it('REV-8 the assumed paces are rows of a pace table', () => {
    // s/km to km/h is 3600/s: 8:00 per km is 7.5 km/h and 40:00 for 5 km; 12:00 is 5 km/h and 60:00.
    expect(3600 / REVIEW_LIMITS.runningPace.value).toBe(7.5);
    expect(3600 / REVIEW_LIMITS.walkingPace.value).toBe(5);
    expect(metresOf(factsOf(planOf('main: 40 min run')))).toBeCloseTo(5000, 6);
    expect(metresOf(factsOf(planOf('main: 60 min walk')))).toBeCloseTo(5000, 6);
    // Runners assumed to go faster than people walk by choice: 7.2 km/h (PMC8629136).
    expect(3600 / REVIEW_LIMITS.runningPace.value).toBeGreaterThan(7.2);
  });

  it('REV-8 standing and stretching lead nowhere', () => {
    expect(metresOf(factsOf(planOf(`${around('12 min walk')}; 5 min stretch; 5 min stand`)))).toBe(
      (22 * 60_000) / 720,
    );
    expect(parsePlan('10 min stand').ok && metresOf(factsOf(planOf('10 min stand')))).toBe(0);
  });

  it('REV-2 five minutes of easy walking are the least that ACSM and the Mayo Clinic advise', () => {
    expect(REVIEW_LIMITS.easyWalk.value).toBe(5 * 60);
  });
});
