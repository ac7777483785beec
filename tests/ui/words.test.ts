import { describe, expect, it } from 'vitest';
import * as times from '../../src/copy/times.ts';
import { partLines, stripInWords, turns } from '../../src/copy/words.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { ms } from '../../src/domain/units.ts';

const planOf = (text: string) => {
  const result = parsePlan(text);
  if (!result.ok) throw new Error(text);
  return result.value;
};

describe('times and words', () => {
  it('UI-20 what is left rounds up and shows nothing only when nothing is left', () => {
    expect(times.left(ms(72_000))).toBe('1:12');
    expect(times.left(ms(71_001))).toBe('1:12');
    expect(times.left(ms(1))).toBe('0:01');
    expect(times.left(ms(0))).toBe('0:00');
    expect(times.left(ms(3_725_000))).toBe('1:02:05');
  });

  it('UI-20 a place rounds down, and its minute is counted from 1', () => {
    expect(times.place(ms(751_999))).toBe('12:31');
    expect(times.minuteOf(ms(0))).toBe(1);
    expect(times.minuteOf(ms(8 * 60_000 + 1))).toBe(9);
  });

  it('UI-20 lengths are written in the units that they have', () => {
    expect(times.length(ms(1_860_000))).toBe('31 min');
    expect(times.length(ms(90_000))).toBe('1 min 30 s');
    expect(times.length(ms(3_900_000))).toBe('1 h 5 min');
    expect(times.minutes(ms(1_000_000))).toBe('17 min');
    expect(times.minutes(ms(45_000))).toBe('45 s');
    expect(times.inWords(ms(61_000))).toBe('1 minute 1 second');
  });

  it('UI-20 a date is shown as the date of its place', () => {
    expect(times.day('2027-03-01')).toBe('Mon, 1 March 2027');
    expect(times.timeOfDay(Date.UTC(2027, 2, 1, 23, 30), 60)).toBe('00:30');
  });

  it('UI-20 what is coming is said in words, repeats and all', () => {
    const plan = planOf('5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk');
    expect(partLines(plan.main)).toEqual(['7 times: walk 1 min, run 2 min']);
    expect(stripInWords(plan)).toBe(
      'Warm-up: easy walk 5 minutes. Main set: 7 times: walk 1 minute, run 2 minutes. Cool-down: easy walk 5 minutes.',
    );
  });

  it('UI-20 sets and rounds are counted as the voice does', () => {
    expect(turns({ n: 3, of: 7 }, undefined)).toBe('Set 3 of 7');
    expect(turns({ n: 1, of: 4 }, { n: 2, of: 3 })).toBe('Round 2 of 3, set 1 of 4');
    expect(turns(undefined, undefined)).toBe('');
  });
});
