import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ACTIVITIES, type Activity } from '../../src/domain/programme/plan.ts';
import type { Segment, Timeline } from '../../src/domain/timeline/timeline.ts';
import { ms } from '../../src/domain/units.ts';
import { stripShape, textureOf } from '../../src/ui/parts/strip-shape.ts';

type Step = readonly [seconds: number, effort: number, activity: Activity];

function timelineOf(steps: readonly Step[]): Timeline {
  let at = 0;
  const segments = steps.map(([seconds, effort, activity], index): Segment => {
    const start = at;
    at += seconds * 1000;
    return { index, start: ms(start), end: ms(at), part: 'main', activity, effort };
  });
  return { segments, total: ms(at) };
}

const step = fc.tuple(
  fc.integer({ min: 5, max: 3600 }),
  fc.integer({ min: 0, max: 100 }),
  fc.constantFrom(...ACTIVITIES),
);
const points = (path: string): number[][] =>
  [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);

describe('the landscape strip', () => {
  it('UI-1 length is time: a segment of half the session is half as wide', () => {
    const { ridge } = stripShape(
      timelineOf([
        [600, 30, 'walk'],
        [300, 60, 'run'],
        [300, 30, 'walk'],
      ]),
      { width: 400, height: 100 },
    );
    const xs = points(ridge).map(([x]) => x);
    expect(xs).toContain(200);
    expect(xs).toContain(300);
    expect(Math.max(...xs.map((x) => x ?? 0))).toBe(400);
  });

  it('UI-1 height is effort: harder is never drawn lower', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }), (a, b) => {
        const shape = stripShape(
          timelineOf([
            [60, a, 'walk'],
            [60, b, 'walk'],
          ]),
          { width: 200, height: 80 },
        );
        const ys = points(shape.ridge).map(([, y]) => y ?? 0);
        const [first, second] = [ys[1] ?? 0, ys[5] ?? 0];
        if (a < b) expect(second).toBeLessThanOrEqual(first);
        if (a > b) expect(second).toBeGreaterThanOrEqual(first);
      }),
    );
  });

  it('UI-1 a strip stays within its box and runs from edge to edge, left to right', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 60 }), (steps) => {
        const shape = stripShape(timelineOf(steps), { width: 320, height: 60 });
        const ridge = points(shape.ridge);
        expect(ridge[0]?.[0]).toBe(0);
        expect(ridge.at(-1)?.[0]).toBe(320);
        ridge.forEach(([x, y], i) => {
          expect(x).toBeGreaterThanOrEqual(ridge[i - 1]?.[0] ?? 0);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(60);
        });
      }),
    );
  });

  it('UI-1 standing, walking, brisk walking, jogging and running have five different textures', () => {
    const textures = (['stand', 'walk', 'brisk walk', 'jog', 'run'] as const).map(textureOf);
    expect(new Set(textures).size).toBe(5);
    for (const activity of ACTIVITIES) expect(textures).toContain(textureOf(activity));
  });
});
