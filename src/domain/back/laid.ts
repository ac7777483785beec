import { parsePlan } from '../programme/parse.ts';
import { type Activity, isRunning, type Part } from '../programme/plan.ts';
import { layOut } from '../timeline/lay-out.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';

/** A stretch of one activity, in milliseconds of its plan. */
export interface Stretch {
  readonly from: Ms;
  readonly to: Ms;
  readonly activity: Activity;
  readonly part: Part;
}

/** The stretches of a plan, in order and without a gap. */
export interface Laid {
  readonly stretches: readonly Stretch[];
  readonly total: Ms;
}

/** A timeline without what nobody asks of it here. */
export const laidOf = ({ segments, total }: Timeline): Laid => ({
  stretches: segments.map(({ start, end, activity, part }) => ({
    from: start,
    to: end,
    activity,
    part,
  })),
  total,
});

/**
 * Reads plans as they stand in a log: each text once, however many sessions have it.
 *
 * @returns a reader that gives nothing for a text that is no plan
 */
export function planReader(): (text: string) => Laid | undefined {
  const known = new Map<string, Laid | undefined>();
  return (text) => {
    if (known.has(text)) return known.get(text);
    const plan = parsePlan(text);
    const laid = plan.ok ? laidOf(layOut(plan.value)) : undefined;
    known.set(text, laid);
    return laid;
  };
}

/** The longest running with no walk, no rest and no part left out in it; 0 where there is none. */
export function longestRunOf(stretches: readonly Stretch[]): Ms {
  let [longest, from, to] = [0, 0, -1];
  for (const stretch of stretches) {
    if (!isRunning(stretch.activity)) continue;
    if (stretch.from !== to) from = stretch.from;
    to = stretch.to;
    longest = Math.max(longest, to - from);
  }
  return ms(longest);
}
