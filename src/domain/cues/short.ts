import type { Segment } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';

/** A segment shorter than this hears its activity alone, and one tone before its end. */
const SHORT = ms(10_000);

export const lengthOf = (segment: Segment): Ms => ms(segment.end - segment.start);

export const isShort = (segment: Segment): boolean => lengthOf(segment) < SHORT;
