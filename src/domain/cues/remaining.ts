import type { Segment } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import { wordsEndBy } from './boundary.ts';
import type { ClipLengths } from './cue.ts';
import { SAY } from './phrases.ts';
import { APART, putAt, type Room } from './room.ts';
import { lengthOf } from './short.ts';

/** What is said of the time that is left, in segments of some length or more. */
const REMAINING = [
  { phrase: SAY.oneMinute, left: 60_000, from: 240_000 },
  { phrase: SAY.tenSeconds, left: 10_000, from: 45_000 },
] as const;

const remainingOf = (segment: Segment) => REMAINING.filter(({ from }) => lengthOf(segment) >= from);

/** When a segment's first words must be over: before its tones, and before the time left is said. */
export function openingEndsBy(segment: Segment): Ms {
  const next = remainingOf(segment)[0];
  return next === undefined ? wordsEndBy(segment) : ms(segment.end - next.left - APART);
}

/** "One minute" and "Ten seconds", each exactly when it is true. */
export function placeRemaining(room: Room, lengths: ClipLengths): void {
  const { segment } = room;
  for (const { phrase, left } of remainingOf(segment)) {
    const about = { kind: 'remaining', segment: segment.index } as const;
    putAt(room, about, phrase, ms(segment.end - left), lengths);
  }
}
