import type { Segment, Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import type { ClipLengths, Cue, PlacedClip } from './cue.ts';
import { TONE } from './phrases.ts';
import { isShort } from './short.ts';
import { cueOf } from './speak.ts';
import type { ClipId } from './vocabulary.ts';

/** Seconds before a boundary at which a short tone is heard; only the last when it is short before. */
export const COUNTDOWN: readonly number[] = [3, 2, 1];

/** From the boundary to its words: the long tone is over. */
const WORDS_AFTER = 700;

/** Least quiet between a long tone and words, should a pack's tone ring on. */
const TONE_TO_WORDS = 48;

/** How long before the next boundary the last word must be over: 0.2 s before its first tone. */
const QUIET_BEFORE = 3200;

/** When the last word within a segment must be over; a short one hears its activity alone. */
export const wordsEndBy = (segment: Segment): Ms => ms(segment.end - QUIET_BEFORE);

/** When the words of a boundary begin: some time after it, and never into its long tone. */
export const wordsStartAt = (
  boundary: Ms,
  tone: ClipId,
  lengths: ClipLengths,
  after = WORDS_AFTER,
): Ms => ms(boundary + Math.max(after, lengths.lengthOf(tone) + TONE_TO_WORDS));

/** The long tone rises into more effort, falls into less, and stays level into the same. */
export function toneInto(before: Segment, after: Segment | undefined): ClipId {
  const change = (after?.effort ?? -1) - before.effort;
  return change > 0 ? TONE.harder : change < 0 ? TONE.easier : TONE.same;
}

/** What of a countdown may differ from place to place. */
interface CountdownParts {
  readonly segment: number;
  /** Seconds before it at which a short tone is heard, falling. */
  readonly counted?: readonly number[];
  /** The long tone at its end; left out: that is another cue's. */
  readonly long?: ClipId;
}

/** Short tones before a time, and the long one at it. */
export function countdownTo(
  at: Ms,
  { segment, counted = COUNTDOWN, long }: CountdownParts,
  lengths: ClipLengths,
): Cue {
  const short = counted.map((s): PlacedClip => ({ at: ms(at - s * 1000), clip: TONE.short }));
  const clips = long === undefined ? short : [...short, { at, clip: long }];
  return cueOf({ kind: 'countdown', segment }, clips, counted.join(', '), lengths);
}

/** The tones of every boundary, the end of the session included: 3, 2, 1 and the long one. */
export function countdowns(timeline: Timeline, lengths: ClipLengths): Cue[] {
  const { segments } = timeline;
  return segments.map((before, i) => {
    const after = segments[i + 1];
    const counted = isShort(before) ? COUNTDOWN.slice(-1) : COUNTDOWN;
    const segment = after === undefined ? i : i + 1;
    return countdownTo(before.end, { segment, counted, long: toneInto(before, after) }, lengths);
  });
}
