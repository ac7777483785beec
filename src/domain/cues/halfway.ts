import type { Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import { wordsEndBy } from './boundary.ts';
import type { ClipLengths, Cue } from './cue.ts';
import { type Phrase, SAY, sayActivity, sayTimeLeft } from './phrases.ts';
import { APART, nearestPlace, putAt, type Room } from './room.ts';
import { isShort, lengthOf } from './short.ts';

/** A segment of this length or more has a halfway of its own. */
const LONG = 600_000;

/** How far a halfway may move, and how near two of them are one. */
const REACH = 30_000;

/** Quiet that a halfway would like around it; it makes do with less. */
const COMFORT = 3000;

/**
 * Say when half of the session, and half of each long segment, is done.
 *
 * A halfway never stands on a boundary: it moves up to 30 s to a place of its own, then tries to
 * end the words of a change, and else is left out. Where the session's and a segment's are within
 * 30 s they are one, said at the session's.
 *
 * @param reword words of a segment's start with a phrase put in after the duration
 */
export function placeHalfways(
  timeline: Timeline,
  rooms: readonly Room[],
  reword: (segment: number, halfway: Phrase) => Cue,
  lengths: ClipLengths,
): void {
  const middle = ms(timeline.total / 2);
  if (!place(rooms, SAY.halfway, middle, lengths)) endWordsWith(rooms, middle, reword);
  for (const room of rooms) {
    const { segment } = room;
    const half = ms((segment.start + segment.end) / 2);
    if (lengthOf(segment) < LONG || Math.abs(half - middle) <= REACH) continue;
    place([room], inSegment(room, half), half, lengths);
  }
}

/** Half of a segment says of what, and how much is left, so that it is not taken for the session's. */
const inSegment = ({ segment }: Room, at: Ms): Phrase => [
  ...SAY.halfway,
  ...sayActivity(segment.activity),
  ...sayTimeLeft(ms(segment.end - at)),
];

function place(rooms: readonly Room[], phrase: Phrase, meant: Ms, lengths: ClipLengths): boolean {
  const found =
    nearestPlace(rooms, phrase, meant, REACH, COMFORT, lengths) ??
    nearestPlace(rooms, phrase, meant, REACH, APART, lengths);
  if (found === undefined) return false;
  const { room, at } = found;
  return putAt(room, { kind: 'halfway', segment: room.segment.index }, phrase, at, lengths);
}

/** The change whose words are nearest to the place, if a halfway fits behind them. */
function endWordsWith(
  rooms: readonly Room[],
  meant: Ms,
  reword: (segment: number, halfway: Phrase) => Cue,
): void {
  const away = (room: Room): number => Math.abs((room.cues[0]?.at ?? Infinity) - meant);
  const near = rooms
    .filter((room) => !isShort(room.segment) && away(room) <= REACH)
    .sort((a, b) => away(a) - away(b));
  for (const room of near) {
    const words = reword(room.segment.index, SAY.halfway);
    const said = words.clips.some(({ clip }) => clip === SAY.halfway[0]);
    const next = room.cues[1];
    const fits = words.end <= (next === undefined ? wordsEndBy(room.segment) : next.at - APART);
    if (said && fits) {
      room.cues[0] = words;
      return;
    }
  }
}
