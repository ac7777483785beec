import {
  DEFAULT_EFFORT,
  type Item,
  PARTS,
  type Part,
  type Plan,
  type Step,
} from '../programme/plan.ts';
import { ms } from '../units.ts';
import type { Segment, Timeline, Turn } from './timeline.ts';

/** Where a step stands among the repeats around it. */
interface Standing {
  readonly set?: Turn;
  readonly round?: Turn;
  readonly block?: number;
}

/**
 * A plan laid out in time: every turn of every repeat written out, one segment for each step.
 *
 * The last recovery of a repeat is kept: 7 x (1 + 2) min is 21 min (common practice, no source;
 * the other convention, in which it melts into the cool-down, is not used).
 *
 * @param plan a plan within the bounds of the shorthand: they are checked when it is parsed
 */
export function layOut(plan: Plan): Timeline {
  const segments: Segment[] = [];
  let at = 0;
  const put = (step: Step, part: Part, standing: Standing): void => {
    const start = at;
    at += step.duration;
    segments.push({
      index: segments.length,
      start: ms(start),
      end: ms(at),
      part,
      activity: step.activity,
      effort: step.effort ?? DEFAULT_EFFORT[step.activity],
      ...standing,
      ...(step.note === undefined ? {} : { note: step.note }),
    });
  };
  for (const part of PARTS) {
    let block = 0;
    for (const item of withoutSingles(plan[part])) {
      const standing = item.kind === 'repeat' ? { block: block++ } : {};
      writeOut(item, standing, (step, where) => put(step, part, where));
    }
  }
  return { segments, total: ms(at) };
}

/** Repeats of one turn are only brackets: nothing is counted in them. */
const withoutSingles = (items: readonly Item[]): Item[] =>
  items.flatMap((item) => {
    if (item.kind === 'step') return [item];
    const inside = withoutSingles(item.items);
    return item.count === 1 ? inside : [{ ...item, items: inside }];
  });

/** How many repeats are inside one another, this one included; a step has none. */
const depthOf = (item: Item): number =>
  item.kind === 'step' ? 0 : 1 + Math.max(0, ...item.items.map(depthOf));

function writeOut(
  item: Item,
  around: Standing,
  put: (step: Step, standing: Standing) => void,
): void {
  if (item.kind === 'step') {
    put(item, around);
    return;
  }
  const depth = depthOf(item);
  for (let n = 1; n <= item.count; n++) {
    const turn = { n, of: item.count };
    const standing =
      depth === 1 ? { ...around, set: turn } : depth === 2 ? { ...around, round: turn } : around;
    for (const inner of item.items) writeOut(inner, standing, put);
  }
}
