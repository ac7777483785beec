import { segmentAt } from '../timeline/segment-at.ts';
import type { Segment } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import type { LeadGroup, LeadPlan } from './lead-plan.ts';
import { endOf } from './moments.ts';

interface OfGroup {
  readonly group: LeadGroup;
  /** When the group is over, counted from the first start. */
  readonly endsAt: Ms;
}

/**
 * What one group is doing. Segments are in the group's own time: `segment.set` is its set n of m,
 * `segment.round` its round.
 */
export type LeadNow =
  | (OfGroup & {
      readonly state: 'waits';
      readonly startsIn: Ms;
      /** What it begins with. */
      readonly next: Segment;
    })
  | (OfGroup & {
      readonly state: 'moves';
      readonly segment: Segment;
      /** Until `segment` ends: more than nothing. */
      readonly left: Ms;
      /** None in the last segment. */
      readonly next?: Segment;
    })
  | (OfGroup & { readonly state: 'done'; readonly since: Ms });

/**
 * What every group is doing at a time, in the order of the groups. A segment includes its start
 * and excludes its end.
 *
 * @param at counted from the first start; before 0 everybody waits
 */
export const leadAt = ({ groups }: LeadPlan, at: Ms): readonly LeadNow[] =>
  groups.map((group) => nowOf(group, at));

function nowOf(group: LeadGroup, at: Ms): LeadNow {
  const { timeline, startsAt } = group;
  const of = { group, endsAt: endOf(group) };
  const own = ms(at - startsAt);
  const [first] = timeline.segments;
  if (own < 0 && first) return { ...of, state: 'waits', startsIn: ms(-own), next: first };
  const segment = segmentAt(timeline, own);
  if (segment === undefined) return { ...of, state: 'done', since: ms(at - of.endsAt) };
  const next = timeline.segments[segment.index + 1];
  const left = ms(segment.end - own);
  return { ...of, state: 'moves', segment, left, ...(next === undefined ? {} : { next }) };
}
