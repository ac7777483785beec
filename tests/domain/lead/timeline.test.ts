import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leadAt } from '../../../src/domain/lead/lead-at.ts';
import type { LeadPlan } from '../../../src/domain/lead/lead-plan.ts';
import { leadTimeline } from '../../../src/domain/lead/lead-timeline.ts';
import { ms } from '../../../src/domain/units.ts';
import { anyLead, demoTogether, group, together } from './lead-plans.ts';

const inWords = (plan: LeadPlan): string[] =>
  leadTimeline(plan).segments.map(
    ({ start, end, part, activity }) => `${start / 1000}-${end / 1000} ${part}: ${activity}`,
  );

describe('all groups as one timeline', () => {
  test('LEAD-1 segments lie between any two times at which some group changes', () => {
    const plan = {
      groups: [
        group(1, '2 min easy walk; main: 3 min run; cool-down: 2 min easy walk'),
        group(2, '2 min easy walk; main: 2 min brisk walk; cool-down: 1 min easy walk', {
          startsAt: 60,
        }),
      ],
      tick: false,
    };
    expect(inWords(plan)).toEqual([
      '0-60 warm-up: easy walk',
      '60-120 warm-up: easy walk',
      '120-180 main: run',
      '180-300 main: run',
      '300-360 cool-down: easy walk',
      '360-420 cool-down: easy walk',
    ]);
  });

  test('LEAD-1 where nobody moves, everybody stands', () => {
    const plan = {
      groups: [group(1, 'main: 1 min run'), group(2, 'main: 1 min walk', { startsAt: 90 })],
      tick: false,
    };
    expect(inWords(plan)).toEqual(['0-60 main: run', '60-90 main: stand', '90-150 main: walk']);
  });

  test('LEAD-1 one group alone is its own session', () => {
    const plan = together('5 min easy walk; 2 x (1 min walk, 1 min run); 5 min easy walk');
    const own = plan.groups[0]?.timeline.segments.map(({ start, end, activity, effort, part }) => ({
      ...{ start, end, activity, effort, part },
    }));
    expect(leadTimeline(plan).segments).toEqual(
      own?.map((segment, index) => ({ index, ...segment })),
    );
  });

  test('LEAD-1 for any groups: no gap, every boundary a change, parts in order, the hardest of all', () => {
    fc.assert(
      fc.property(anyLead, (plan) => {
        const { segments, total } = leadTimeline(plan);
        const times = plan.groups.flatMap(({ startsAt, timeline }) => [
          startsAt,
          ...timeline.segments.map(({ end }) => startsAt + end),
        ]);
        const bounds = [...new Set([0, ...times])].sort((a, b) => a - b);
        expect(segments.map(({ start }) => start)).toEqual(bounds.slice(0, -1));
        expect(segments.map(({ end }) => end)).toEqual(bounds.slice(1));
        expect(total).toBe(bounds.at(-1));
        expect(segments.map(({ index }) => index)).toEqual(segments.map((_, i) => i));
        const order = segments.map(({ part }) => ['warm-up', 'main', 'cool-down'].indexOf(part));
        expect(order).toEqual(order.toSorted((a, b) => a - b));
        for (const { start, effort } of segments) {
          const efforts = leadAt(plan, start).map((now) =>
            now.state === 'moves' ? now.segment.effort : 0,
          );
          expect(effort).toBe(Math.max(0, ...efforts));
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe('what each group is doing', () => {
  const plan = demoTogether(3, 120);
  const at = (seconds: number) =>
    leadAt(plan, ms(seconds * 1000)).map((now) => {
      if (now.state === 'waits') return `waits ${now.startsIn / 1000}: ${now.next.activity}`;
      if (now.state === 'done') return `done since ${now.since / 1000}`;
      const { activity, set } = now.segment;
      const then = now.next === undefined ? 'the end' : now.next.activity;
      const turn = set === undefined ? '' : ` ${set.n} of ${set.of}`;
      return `${activity}${turn}, ${now.left / 1000} left, then ${then}`;
    });

  test('LEAD-2 it waits, moves or is done', () => {
    expect(at(0)).toEqual([
      'easy walk, 300 left, then walk',
      'waits 120: easy walk',
      'waits 240: easy walk',
      'waits 360: easy walk',
    ]);
    expect(at(300)[0]).toBe('walk 1 of 5, 180 left, then brisk walk');
    expect(at(299.999)[0]).toBe('easy walk, 0.001 left, then walk');
    expect(at(2099.999)[0]).toBe('easy walk, 0.001 left, then the end');
    expect(at(2100)[0]).toBe('done since 0');
  });

  test('LEAD-2 when each is over is counted from the first start', () => {
    expect(leadAt(plan, ms(0)).map(({ endsAt }) => endsAt / 1000)).toEqual([
      2100, 2220, 2340, 2460,
    ]);
  });

  test('LEAD-2 for any groups and time: what is left is true, and the next follows', () => {
    fc.assert(
      fc.property(anyLead, fc.double({ min: 0, max: 1.1, noNaN: true }), (any, share) => {
        const time = ms(leadTimeline(any).total * share);
        for (const now of leadAt(any, time)) {
          const { startsAt, timeline } = now.group;
          expect(now.endsAt).toBe(startsAt + timeline.total);
          if (now.state === 'waits') expect(time + now.startsIn).toBe(startsAt);
          else if (now.state === 'done') expect(time - now.since).toBe(now.endsAt);
          else {
            expect(now.left).toBeGreaterThan(0);
            expect(now.left).toBeLessThanOrEqual(now.segment.end - now.segment.start);
            expect(time + now.left).toBe(startsAt + now.segment.end);
            expect(now.next).toBe(timeline.segments[now.segment.index + 1]);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});
