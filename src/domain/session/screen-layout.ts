import type { Timeline } from '../timeline/timeline.ts';
import { type LeadIn, layOut, type TrackLayout } from '../track/layout.ts';
import { ms } from '../units.ts';
import { hasCoolDown } from './places.ts';

const MINUTE = ms(60_000);

/**
 * The layout of a session that is only seen: the same lanes on the same axis of time, with
 * nothing to be said in them. The monotonic clock moves along it as the sound would.
 */
export const screenLayout = (timeline: Timeline, leadIn?: LeadIn): TrackLayout =>
  layOut(
    timeline.total,
    {
      holding: ms(30 * MINUTE),
      oneMore: MINUTE,
      ...(hasCoolDown(timeline) ? {} : { coolDown: ms(5 * MINUTE) }),
    },
    leadIn,
  );
