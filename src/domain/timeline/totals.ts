import { isRunning, type Part } from '../programme/plan.ts';
import { type Ms, ms, secondsOf } from '../units.ts';
import type { Segment, Timeline } from './timeline.ts';

/** What a plan comes to. */
export interface Totals {
  /** The whole plan, every recovery included. */
  readonly seconds: number;
  /** The main part, its recoveries included. */
  readonly mainSeconds: number;
  /** Jog and faster, in whichever part. */
  readonly runSeconds: number;
  /** How many segments there are, every turn of every repeat counted. */
  readonly segments: number;
}

/** What a session adds up to. */
export const totalsOf = (timeline: Timeline): Totals => ({
  seconds: secondsOf(timeline.total),
  mainSeconds: secondsOf(lengthOfPart(timeline, 'main')),
  runSeconds: secondsOf(lengthWhere(timeline, ({ activity }) => isRunning(activity))),
  segments: timeline.segments.length,
});

/** How long one part is; 0 where the plan has none. */
export const lengthOfPart = (timeline: Timeline, part: Part): Ms =>
  lengthWhere(timeline, (segment) => segment.part === part);

const lengthWhere = (timeline: Timeline, holds: (segment: Segment) => boolean): Ms =>
  ms(
    timeline.segments
      .filter(holds)
      .reduce((sum, segment) => sum + (segment.end - segment.start), 0),
  );
