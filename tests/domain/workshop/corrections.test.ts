import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { type Correction, correctionsOf } from '../../../src/domain/workshop/corrections.ts';
import { roughText } from '../programme/arbitraries.ts';

const offered = (text: string): readonly Correction[] => {
  const read = parsePlan(text);
  return read.ok ? [] : correctionsOf(text, read.error);
};
const texts = (text: string): string[] => offered(text).map((each) => each.text);

describe('putting a mistake right', () => {
  it('CELL-3 what was surely meant is offered in its place', () => {
    const cases: readonly (readonly [string, ...string[]])[] = [
      ['5 m walk; 10 min run', '5 min walk; 10 min run'],
      ['5 min joog', '5 min jog'],
      ['two min run', '2 min run'],
      ['half an hour walk', '30 min walk'],
      ['1,5 min run', '1 min 30 s run'],
      ['1:75 run', '2 min 15 s run'],
      ['1 min 30 run', '1 min 30 s run'],
      ['5 run', '5 min run', '5 s run'],
      ['10 min run @ 6,5/10', '10 min run @ 65%'],
      ['10 min run @ 70', '10 min run @ 70%'],
      ['10 min run @ 60-70%', '10 min run @ 65%'],
      ['6 x (2 min run, 1 min walk ', '6 x (2 min run, 1 min walk)'],
      ['10 min run "Tall\n5 min walk', '10 min run "Tall"\n5 min walk'],
      ['5 min walk 10 min run', '5 min walk; 10 min run'],
      ['5 min walk | 10 min run', '5 min walk ; 10 min run'],
      ['6 (2 min run, 1 min walk)', '6 x (2 min run, 1 min walk)'],
      ['main 5 min run', 'main: 5 min run'],
      ['warm: 5 min walk; main: 5 min run', 'warm-up: 5 min walk; main: 5 min run'],
      ['5 min walk) ; 5 min run', '5 min walk ; 5 min run'],
    ];
    for (const [text, ...right] of cases) expect([text, texts(text)]).toEqual([text, right]);
  });

  it('CELL-3 a text that can be read in two ways is offered both, each with its length', () => {
    // 6 x (2 + 1) = 18 min, and 6 x 2 + 1 = 13 min, worked by hand.
    expect(offered('6 x 2 min run / 1 min walk').map(({ write, total }) => [write, total])).toEqual(
      [
        ['6 x (2 min run, 1 min walk)', '18 min'],
        ['6 x 2 min run; 1 min walk', '13 min'],
      ],
    );
  });

  it('CELL-3 nothing is offered where only the writer knows what was meant', () => {
    for (const text of [
      '',
      '5-10 min run',
      '400 m run',
      '10 min run @ 140%',
      '60 x 1 min run',
      '@',
    ])
      expect([text, texts(text)]).toEqual([text, []]);
  });

  it('CELL-3 whatever is offered was tried, and the text around it stays', () => {
    let tried = 0;
    fc.assert(
      fc.property(roughText, (text) => {
        const read = parsePlan(text);
        if (read.ok) return;
        const { offset } = read.error.place;
        for (const { text: corrected, end, write } of correctionsOf(text, read.error)) {
          tried += 1;
          const again = parsePlan(corrected);
          if (!again.ok) expect(again.error.place.offset).toBeGreaterThanOrEqual(end);
          expect(corrected.slice(end - write.length, end)).toBe(write);
          const kept = text.slice(0, offset).trimEnd();
          expect(corrected.startsWith(kept)).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
    expect(tried).toBeGreaterThan(100);
  });

  it('CELL-3 taking what is offered again and again comes to an end', () => {
    fc.assert(
      fc.property(roughText, (text) => {
        let now = text;
        let steps = 0;
        for (let next = offered(now)[0]; next !== undefined; next = offered(now)[0]) {
          now = next.text;
          steps += 1;
          expect(steps).toBeLessThan(200);
        }
      }),
    );
  });
});
