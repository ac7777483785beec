import { isRunning } from '../programme/plan.ts';
import { segmentAt } from '../timeline/segment-at.ts';
import type { Segment, Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import type { Change } from './effect.ts';

/** How far before its place a session goes on after a hold. */
export const GO_ON_BEFORE = ms(3000);
/** `back` this soon after a segment's start means the one before. */
export const BACK_WITHIN = ms(3000);
/** A return to a segment leaves this much of it: "ten seconds" and the countdown are heard. */
export const COUNTDOWN_ROOM = ms(12_000);

/** The segment that holds at a place; the last one from the end on. */
export const segmentHere = (timeline: Timeline, at: Ms): Segment =>
  segmentAt(timeline, at) ?? (timeline.segments.at(-1) as Segment);

/** How a segment compares with the one before it. */
export function changeTo(timeline: Timeline, segment: Segment): Change {
  const before = timeline.segments[segment.index - 1];
  if (before === undefined || before.effort === segment.effort) return 'same';
  return segment.effort > before.effort ? 'harder' : 'easier';
}

/** A recovery: easier than the segment before or after it. */
export function isEasierThanNeighbour(timeline: Timeline, segment: Segment): boolean {
  const before = timeline.segments[segment.index - 1];
  const after = timeline.segments[segment.index + 1];
  return [before, after].some((other) => other !== undefined && other.effort > segment.effort);
}

/** The next segment in which nobody runs. */
export const nextWalk = (timeline: Timeline, from: Segment): Segment | undefined =>
  timeline.segments.slice(from.index + 1).find((segment) => !isRunning(segment.activity));

/** Whether the plan has a cool-down of its own. */
export const hasCoolDown = (timeline: Timeline): boolean =>
  timeline.segments.at(-1)?.part === 'cool-down';

/** Where `back` leads: the start of this segment, or of the one before when it has just begun. */
export function backFrom(timeline: Timeline, at: Ms): Ms {
  const segment = segmentHere(timeline, at);
  const before = timeline.segments[segment.index - 1];
  return at - segment.start <= BACK_WITHIN && before !== undefined ? before.start : segment.start;
}
