import type { Segment } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';

/** A segment shorter than this hears its activity alone, and one tone before its end. */
const SHORT = ms(10_000);

/** How long a segment is. */
export const lengthOf = (segment: Segment): Ms => ms(segment.end - segment.start);

/** Whether a segment is too short for more than its name. */
export const isShort = (segment: Segment): boolean => lengthOf(segment) < SHORT;
