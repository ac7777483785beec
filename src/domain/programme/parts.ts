import { EASY_PART_MAX } from './bounds.ts';
import type { Item, Plan, Step } from './plan.ts';
import { DEFAULT_EFFORT } from './plan.ts';

const effortOf = (step: Step): number => step.effort ?? DEFAULT_EFFORT[step.activity];

/** Standing, stretching, walking and jogging warm up and cool down; a run is training. */
const isEasy = (item: Item): boolean => item.kind === 'step' && !item.activity.endsWith('run');

/** First and last of what is surely the main part: the repeats, or else the hardest steps. */
function coreOf(items: readonly Item[]): { first: number; last: number } {
  const hardest = Math.max(0, ...items.map((item) => (item.kind === 'step' ? effortOf(item) : 0)));
  const hasRepeat = items.some((item) => item.kind === 'repeat');
  const inCore = (item: Item): boolean =>
    item.kind === 'repeat' || (!hasRepeat && effortOf(item) === hardest);
  return { first: items.findIndex(inCore), last: items.findLastIndex(inCore) };
}

/** How many items from the front are easy and fit into 15 minutes together. */
function easyRun(items: readonly Item[]): number {
  let length = 0;
  let n = 0;
  for (const item of items) {
    if (item.kind !== 'step' || !isEasy(item)) break;
    length += item.duration;
    if (length > EASY_PART_MAX) break;
    n += 1;
  }
  return n;
}

/**
 * Parts of a plan that has no labels. The core is every top-level repeat or, with none, the steps
 * of the highest effort, from first to last. Easy steps before it, at most 15 minutes counted from
 * the start, are the warm-up; easy steps after it, counted from the end, the cool-down. Everything
 * between them is the main part.
 */
export function partsOf(items: readonly Item[]): Plan {
  const core = coreOf(items);
  const warmUp = easyRun(items.slice(0, core.first));
  const coolDown = easyRun(items.slice(core.last + 1).reverse());
  return {
    'warm-up': items.slice(0, warmUp),
    main: items.slice(warmUp, items.length - coolDown),
    'cool-down': items.slice(items.length - coolDown),
  };
}
