import type { Part } from '../programme/plan.ts';
import { segmentAt } from '../timeline/segment-at.ts';
import type { Segment, Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import type { LeadPlan } from './lead-plan.ts';
import { endOfAll, momentsOf } from './moments.ts';

/**
 * All groups as one timeline, for a player that knows of one: a segment between any two
 * neighbouring times at which some group starts, changes or ends.
 *
 * Only the boundaries say what happens. A segment's activity and effort are those of whoever
 * works hardest in it (the first of them), so that the strip shows where it is hard; where nobody
 * moves, everybody stands. It is warm-up as long as everybody who moves warms up, and cool-down
 * once everybody who still moves cools down.
 */
export function leadTimeline(plan: LeadPlan): Timeline {
  const total = endOfAll(plan);
  const bounds = [...new Set([ms(0), ...momentsOf(plan).map(({ at }) => at)])];
  const stretches = bounds.slice(1).map((end, i) => {
    const start = bounds[i] as Ms;
    return { start, end, going: movingAt(plan, start) };
  });
  const parts = partsOf(stretches.map(({ going }) => going));
  const segments = stretches.map(({ start, end, going }, index): Segment => {
    const { activity, effort } = hardest(going) ?? { activity: 'stand', effort: 0 };
    return { index, start, end, part: parts[index] ?? 'main', activity, effort };
  });
  return { segments, total };
}

/** What every group that moves at a time is doing, in the order of the groups. */
const movingAt = ({ groups }: LeadPlan, at: Ms): Segment[] =>
  groups.flatMap(({ timeline, startsAt }) => segmentAt(timeline, ms(at - startsAt)) ?? []);

const hardest = (going: readonly Segment[]): Segment | undefined => {
  const most = Math.max(...going.map(({ effort }) => effort));
  return going.find(({ effort }) => effort === most);
};

/** Warm-up, main and cool-down in this order, each in one piece. */
function partsOf(stretches: readonly (readonly Segment[])[]): Part[] {
  const only = (part: Part) => (going: readonly Segment[]) =>
    going.every((segment) => segment.part === part);
  const warm = stretches.findIndex((going) => !only('warm-up')(going));
  const cool = stretches.findLastIndex((going) => !only('cool-down')(going)) + 1;
  return stretches.map((_, i) => (i < warm ? 'warm-up' : i < cool ? 'main' : 'cool-down'));
}
