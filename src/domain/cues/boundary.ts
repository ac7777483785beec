import type { Segment, Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import type { ClipLengths, Cue, PlacedClip } from './cue.ts';
import { TONE } from './phrases.ts';
import { isShort } from './short.ts';
import { cueOf } from './speak.ts';
import type { ClipId } from './vocabulary.ts';

/** Seconds before a boundary at which a short tone is heard; only the last when it is short before. */
const COUNTDOWN = [3, 2, 1];

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

/** The tones of every boundary, the end of the session included: 3, 2, 1 and the long one. */
export function countdowns(timeline: Timeline, lengths: ClipLengths): Cue[] {
  const { segments } = timeline;
  return segments.map((before, i) => {
    const after = segments[i + 1];
    const counted = isShort(before) ? COUNTDOWN.slice(-1) : COUNTDOWN;
    const short = counted.map(
      (seconds): PlacedClip => ({ at: ms(before.end - seconds * 1000), clip: TONE.short }),
    );
    const long = { at: before.end, clip: toneInto(before, after) };
    const about = { kind: 'countdown', segment: after === undefined ? i : i + 1 } as const;
    return cueOf(about, [...short, long], counted.join(', '), lengths);
  });
}
