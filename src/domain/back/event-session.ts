import type { Programme } from '../programme/programme.ts';
import { sessionsIn } from '../review/outline.ts';
import { layOut } from '../timeline/lay-out.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { ASSUMED_SPEEDS } from './estimate.ts';
import { metresOfMix, mixOf } from './mix.ts';

/** The session of a group that is most like the event. */
export interface EventSession {
  /** From 1. */
  readonly week: number;
  readonly timeline: Timeline;
}

/**
 * The session of a group that leads farthest at the assumed speeds, and of several the latest: it
 * is the one that is most like the event.
 *
 * @returns undefined when the group has no session that leads anywhere
 */
export function eventSession(
  { weeks }: Pick<Programme, 'weeks'>,
  group: string,
): EventSession | undefined {
  let [most, found]: [number, EventSession | undefined] = [0, undefined];
  weeks.forEach((week, n) => {
    for (const { plan } of sessionsIn(week, group)) {
      const timeline = layOut(plan);
      const metres = metresOfMix(mixOf(timeline), ASSUMED_SPEEDS.slow);
      if (metres === 0 || metres < most) continue;
      most = metres;
      found = { week: n + 1, timeline };
    }
  });
  return found;
}
