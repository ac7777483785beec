import { sayDuration } from '../programme/duration.ts';
import type { Item, Plan } from '../programme/plan.ts';
import { PARTS } from '../programme/plan.ts';
import { lengthOf, planLength } from '../programme/totals.ts';
import { ms, msOfSeconds } from '../units.ts';
import { REVIEW_LIMITS } from './limits.ts';
import type { Found } from './warning.ts';

const EASY_WALK = msOfSeconds(REVIEW_LIMITS.easyWalk.value);

const isStill = (item: Item): boolean =>
  item.kind === 'step' && (item.activity === 'stand' || item.activity === 'stretch');

/** How long the items walk before anything faster begins; standing and stretching count as none. */
function walkFrom(items: readonly Item[]): { length: number; all: boolean } {
  let length = 0;
  for (const item of items) {
    if (isStill(item)) continue;
    if (item.kind === 'step') {
      if (!item.activity.endsWith('walk')) return { length, all: false };
      length += item.duration;
    } else {
      const inside = walkFrom(item.items);
      length += inside.length * (inside.all ? item.count : 1);
      if (!inside.all) return { length, all: false };
    }
  }
  return { length, all: true };
}

const backwards = (items: readonly Item[]): readonly Item[] =>
  items
    .map((item) => (item.kind === 'step' ? item : { ...item, items: backwards(item.items) }))
    .reverse();

/** A repeat of one running step: nothing to recover in between. */
const isBreathless = (item: Item): boolean =>
  item.kind === 'repeat' &&
  ((item.count > 1 &&
    item.items.length === 1 &&
    item.items[0]?.kind === 'step' &&
    item.items[0].activity.endsWith('run')) ||
    item.items.some(isBreathless));

function checkEnds(plan: Plan): readonly Found[] {
  const all = PARTS.flatMap((part) => plan[part]);
  return (['warm-up', 'cool-down'] as const).flatMap((part): Found[] => {
    const { length } = walkFrom(part === 'warm-up' ? all : backwards(all));
    if (length >= EASY_WALK) return [];
    if (length === 0) return [{ code: `${part}-none` }];
    return [{ code: `${part}-short`, detail: { length: sayDuration(ms(length)) } }];
  });
}

/**
 * What one session leaves to be asked: whether the first and the last thing done is walking, the
 * main part most of it, and a rest between repeated runs. The thresholds and their sources are in
 * `limits.ts`.
 */
export function checkPlan(plan: Plan): readonly Found[] {
  const found: Found[] = [...checkEnds(plan)];
  const [main, all] = [lengthOf(plan.main), planLength(plan)];
  if (main * 100 < all * REVIEW_LIMITS.mainShare.value)
    found.push({ code: 'main-short', detail: { main: sayDuration(main), all: sayDuration(all) } });
  if (plan.main.some(isBreathless)) found.push({ code: 'no-recovery' });
  return found;
}
