import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Item, isRunning, PARTS, type Step } from '../../../src/domain/programme/plan.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import { segmentAt } from '../../../src/domain/timeline/segment-at.ts';
import { lengthOfPart, totalsOf } from '../../../src/domain/timeline/totals.ts';
import { ms } from '../../../src/domain/units.ts';
import { anyPlan, mainOnly, repeat, secondsOfItems, step, timelineOf } from '../cues/plans.ts';

/** Steps in the order in which they are done, written without the code under test. */
const stepsOf = (items: readonly Item[]): Step[] =>
  items.flatMap((item) =>
    item.kind === 'step' ? [item] : Array(item.count).fill(item.items).flatMap(stepsOf),
  );

describe('a plan laid out in time', () => {
  test('TIME-1 leaves no gap, does not overlap, and adds up exactly', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { segments, total } = layOut(plan);
        let at = 0;
        segments.forEach((segment, i) => {
          expect(segment.index).toBe(i);
          expect(segment.start).toBe(at);
          expect(segment.end).toBeGreaterThan(segment.start);
          at = segment.end;
        });
        expect(at).toBe(total);
        expect(total / 1000).toBe(PARTS.reduce((sum, part) => sum + secondsOfItems(plan[part]), 0));
      }),
    );
  });

  test('TIME-2 a step without a note is laid out without one, not with an empty one', () => {
    const { segments } = layOut(mainOnly(step(60, 'walk')));
    expect(segments.map((segment) => 'note' in segment)).toEqual([false]);
  });

  test('TIME-2, TIME-7 writes out every step of every turn, in order, with its effort and note', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { segments } = layOut(plan);
        const steps = PARTS.flatMap((part) => stepsOf(plan[part]).map((it) => ({ part, ...it })));
        expect(
          segments.map(({ part, activity, start, end, note }) => [
            part,
            activity,
            end - start,
            note,
          ]),
        ).toEqual(steps.map((it) => [it.part, it.activity, it.duration, it.note]));
        for (const [i, { effort }] of steps.entries()) {
          if (effort !== undefined) expect(segments[i]?.effort).toBe(effort);
        }
      }),
    );
  });

  test.each([
    ['stand', 0],
    ['stretch', 10],
    ['slow walk', 20],
    ['easy walk', 25],
    ['walk', 30],
    ['brisk walk', 45],
    ['easy jog', 50],
    ['jog', 55],
    ['run', 65],
    ['steady run', 65],
    ['strong run', 80],
    ['fast run', 90],
  ] as const)(
    'TIME-7 %s stands for %i %% until the leader writes another effort',
    (activity, own) => {
      const plan = mainOnly(step(60, activity), step(60, activity, { effort: 37 }));
      expect(layOut(plan).segments.map(({ effort }) => effort)).toEqual([own, 37]);
    },
  );

  test('TIME-3 finds at every place the one segment that includes it', () => {
    fc.assert(
      fc.property(anyPlan, fc.double({ min: 0, max: 1, noNaN: true }), (plan, share) => {
        const timeline = layOut(plan);
        const t = ms(share * (timeline.total - 1));
        const holding = timeline.segments.filter(({ start, end }) => start <= t && t < end);
        expect(holding).toHaveLength(1);
        expect(segmentAt(timeline, t)).toBe(holding[0]);
      }),
    );
  });

  test('TIME-3 a segment includes its start and excludes its end; outside there is none', () => {
    const timeline = timelineOf('1 min walk, 2 min run');
    const at = (t: number) => segmentAt(timeline, ms(t))?.activity;
    expect([at(-1), at(0), at(59_999), at(60_000), at(179_999), at(180_000)]).toEqual([
      undefined,
      'walk',
      'walk',
      'run',
      'run',
      undefined,
    ]);
  });

  test('TIME-6 totals agree with a sum over the plan', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const timeline = layOut(plan);
        const running = PARTS.flatMap((part) => stepsOf(plan[part])).filter((it) =>
          isRunning(it.activity),
        );
        const totals = totalsOf(timeline);
        expect(totals.mainSeconds).toBe(secondsOfItems(plan.main));
        expect(totals.runSeconds).toBe(secondsOfItems(running));
        expect(totals.segments).toBe(timeline.segments.length);
        expect(PARTS.reduce((sum, part) => sum + lengthOfPart(timeline, part), 0)).toBe(
          timeline.total,
        );
      }),
    );
  });
});

describe('sets, rounds and blocks', () => {
  const standing = (...items: Item[]) =>
    layOut(mainOnly(...items)).segments.map(({ activity, set, round, block }) =>
      [
        activity,
        round ? `round ${round.n}/${round.of}` : '',
        set ? `set ${set.n}/${set.of}` : '',
        block ?? '-',
      ]
        .filter((it) => it !== '')
        .join(' '),
    );

  test('TIME-4 a repeat of steps counts sets', () => {
    expect(standing(repeat(2, step(60, 'run'), step(60, 'walk')))).toEqual([
      'run set 1/2 0',
      'walk set 1/2 0',
      'run set 2/2 0',
      'walk set 2/2 0',
    ]);
  });

  test('TIME-4 a repeat around sets counts rounds, and a step between its sets has a round only', () => {
    expect(standing(repeat(2, repeat(2, step(60, 'run')), step(60, 'walk')))).toEqual([
      'run round 1/2 set 1/2 0',
      'run round 1/2 set 2/2 0',
      'walk round 1/2 0',
      'run round 2/2 set 1/2 0',
      'run round 2/2 set 2/2 0',
      'walk round 2/2 0',
    ]);
  });

  test('TIME-4 a repeat of one turn is only brackets, outside and inside', () => {
    expect(standing(repeat(1, repeat(2, step(60, 'run'))))).toEqual([
      'run set 1/2 0',
      'run set 2/2 0',
    ]);
    expect(standing(repeat(2, repeat(1, step(60, 'run')), step(60, 'walk')))).toEqual([
      'run set 1/2 0',
      'walk set 1/2 0',
      'run set 2/2 0',
      'walk set 2/2 0',
    ]);
    expect(standing(repeat(1, step(60, 'run')))).toEqual(['run -']);
  });

  test('TIME-5 blocks number the outermost repeats of a part; steps between them have none', () => {
    expect(
      standing(repeat(2, step(60, 'run')), step(60, 'walk'), repeat(2, step(60, 'jog'))),
    ).toEqual(['run set 1/2 0', 'run set 2/2 0', 'walk -', 'jog set 1/2 1', 'jog set 2/2 1']);
  });

  test('TIME-5 each part numbers its own blocks', () => {
    const { segments } = timelineOf(
      'warm-up: 2 x 1 min walk; main: 2 x 1 min run; cool-down: 2 x 1 min walk',
    );
    expect(segments.map(({ block }) => block)).toEqual([0, 0, 0, 0, 0, 0]);
  });
});
