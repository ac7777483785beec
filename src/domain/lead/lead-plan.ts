import type { Timeline } from '../timeline/timeline.ts';
import type { Ms } from '../units.ts';

/** How a group is told on the loudspeaker. `silent`: it is only on the screen. */
export const VOICES = ['words', 'tone', 'silent'] as const;
/** How one group is told. */
export type Voice = (typeof VOICES)[number];

/** One group of a session that is led together. */
export interface LeadGroup {
  /** As it is spoken: "Group one". From 1 to 8, in the programme's order. */
  readonly number: number;
  readonly id: string;
  readonly name: string;
  readonly timeline: Timeline;
  /** How much later than the first it starts: whole seconds, 0 to 30 min. */
  readonly startsAt: Ms;
  readonly voice: Voice;
}

/** All groups from one start. */
export interface LeadPlan {
  /** At least one, by number, each number once. */
  readonly groups: readonly LeadGroup[];
  /** A soft tick in long quiet, so that a loudspeaker does not fall asleep. */
  readonly tick: boolean;
}
