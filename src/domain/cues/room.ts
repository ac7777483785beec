import type { Segment } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import { wordsEndBy } from './boundary.ts';
import type { ClipLengths, Cue } from './cue.ts';
import type { Phrase } from './phrases.ts';
import { isShort } from './short.ts';
import { type About, heardFor, spokenCue } from './speak.ts';

/** Least quiet between two spoken cues. */
export const APART = 1000;

/** What is heard within a segment, in order: its change words first. */
export interface Room {
  readonly segment: Segment;
  readonly cues: Cue[];
}

/** A quiet stretch of a segment, and the sounds that it lies between. */
export interface Gap {
  readonly room: Room;
  /** Where in the room's order a cue in this gap belongs. */
  readonly index: number;
  readonly from: Ms;
  readonly to: Ms;
  /** The last moment at which a cue in this gap may end. */
  readonly until: Ms;
}

/** The quiet stretches of a room. A short segment has none: it hears its activity alone. */
export function gapsOf(room: Room): Gap[] {
  const { segment, cues } = room;
  if (isShort(segment)) return [];
  return cues.map((cue, i) => {
    const next = cues[i + 1];
    const to = next?.at ?? ms(segment.end - 3000);
    const until = next === undefined ? wordsEndBy(segment) : ms(to - APART);
    return { room, index: i + 1, from: cue.end, to, until };
  });
}

/** Put a cue where it is meant to be; false when there is no room just there. */
export function putAt(
  room: Room,
  about: About,
  phrase: Phrase,
  at: Ms,
  lengths: ClipLengths,
): boolean {
  const cue = spokenCue(about, phrase, at, lengths);
  const gap = gapsOf(room).find(({ from, until }) => from + APART <= cue.at && cue.end <= until);
  if (gap === undefined) return false;
  room.cues.splice(gap.index, 0, cue);
  return true;
}

/**
 * The place nearest to the one meant at which a phrase can be heard, at most `reach` away.
 *
 * @param spare quiet that is wanted on either side, at least that between any two cues
 */
export function nearestPlace(
  rooms: readonly Room[],
  phrase: Phrase,
  meant: Ms,
  reach: number,
  spare: number,
  lengths: ClipLengths,
): { readonly room: Room; readonly at: Ms } | undefined {
  const length = heardFor(phrase, lengths);
  const extra = Math.max(0, spare - APART);
  let best: { readonly room: Room; readonly at: Ms } | undefined;
  for (const room of rooms) {
    if (room.segment.end < meant - reach || room.segment.start > meant + reach) continue;
    for (const gap of gapsOf(room)) {
      const first = gap.from + APART + extra;
      const last = gap.until - extra - length;
      if (first > last) continue;
      const at = ms(Math.min(last, Math.max(first, meant)));
      const away = Math.abs(at - meant);
      if (away <= reach && (best === undefined || away < Math.abs(best.at - meant)))
        best = { room, at };
    }
  }
  return best;
}
