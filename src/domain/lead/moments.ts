import { groupedBy } from '../grouped-by.ts';
import type { Segment } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import type { LeadGroup, LeadPlan } from './lead-plan.ts';

/** One group starts, goes from one segment into the next, or ends. */
export interface LeadChange {
  readonly group: LeadGroup;
  /** In the group's own time. None where the group starts. */
  readonly before?: Segment;
  /** In the group's own time. None where the group ends. */
  readonly after?: Segment;
}

/** A time, counted from the first start, at which some groups change. */
export interface Moment {
  readonly at: Ms;
  /** At least one, in the order of the groups. */
  readonly changes: readonly LeadChange[];
}

/** When a group is over, counted from the first start. */
export const endOf = ({ startsAt, timeline }: LeadGroup): Ms => ms(startsAt + timeline.total);

/** When the last group is over. */
export const endOfAll = ({ groups }: LeadPlan): Ms => ms(Math.max(0, ...groups.map(endOf)));

/** Every time at which some group starts, changes or ends, in order, each once. */
export function momentsOf({ groups }: LeadPlan): Moment[] {
  const found = groupedBy(groups.flatMap(changesOf), ([at]) => at);
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([at, changes]) => ({ at: ms(at), changes: changes.map(([, change]) => change) }));
}

function changesOf(group: LeadGroup): [number, LeadChange][] {
  const { segments } = group.timeline;
  const last = segments.at(-1);
  const begun = segments.map((after, i): [number, LeadChange] => {
    const before = segments[i - 1];
    const change = before === undefined ? { group, after } : { group, before, after };
    return [group.startsAt + after.start, change];
  });
  return last === undefined ? [] : [...begun, [endOf(group), { group, before: last }]];
}
