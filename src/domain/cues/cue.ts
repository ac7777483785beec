import type { Ms } from '../units.ts';
import type { ClipId } from './vocabulary.ts';

/** What a cue is for. */
export type CueKind =
  | 'start'
  | 'countdown'
  | 'change'
  | 'remaining'
  | 'halfway'
  | 'effort'
  | 'reminder'
  | 'finish'
  /** Keeps a loudspeaker awake, and says nothing. */
  | 'tick';

/** How much is said: tones, activity and duration only; the usual; or never quiet for long. */
export const TALK_LEVELS = ['few', 'usual', 'many'] as const;
/** How much is said. */
export type Talk = (typeof TALK_LEVELS)[number];

/** One clip of the voice pack (a word or a tone) and when its first sound is to be heard. */
export interface PlacedClip {
  readonly at: Ms;
  readonly clip: ClipId;
}

/** Something to be heard. `at` is its first sound, `end` the end of its last. */
export interface Cue {
  readonly kind: CueKind;
  readonly at: Ms;
  readonly end: Ms;
  /** In order, none overlapping. */
  readonly clips: readonly PlacedClip[];
  /** The words as a caption; for tones a description such as "3, 2, 1". */
  readonly text: string;
  /** Index of the segment that the cue speaks about. */
  readonly segment: number;
  /** What the leader wrote: shown and captioned beside the words, never spoken. */
  readonly note?: string;
}

/** Everything to be heard in a session, in order of `at`, none overlapping. */
export interface CuePlan {
  readonly cues: readonly Cue[];
  readonly total: Ms;
}

/** What the cue plan needs to know of a voice: how long a clip is heard. */
export interface ClipLengths {
  /** From the first sound of the clip to its last. Throws on an unknown clip: a pack is checked first. */
  lengthOf(clip: ClipId): Ms;
}
