import type { Ms } from '../units.ts';
import type { Segment, Timeline } from './timeline.ts';

/**
 * The segment that holds at a place: it includes its start and excludes its end.
 *
 * @param t place in the session; before 0, and from `total` on, there is none
 */
export function segmentAt(timeline: Timeline, t: Ms): Segment | undefined {
  const { segments } = timeline;
  let low = 0;
  let high = segments.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const segment = segments[middle] as Segment;
    if (t < segment.start) high = middle - 1;
    else if (t >= segment.end) low = middle + 1;
    else return segment;
  }
  return undefined;
}
