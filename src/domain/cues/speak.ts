import { type Ms, ms } from '../units.ts';
import type { ClipLengths, Cue, CueKind, PlacedClip } from './cue.ts';
import { captionOf, type Phrase, pauseBetween } from './phrases.ts';

/** Clips said one after another from a time on, with the pauses at which they join. */
export function placeClips(phrase: Phrase, from: Ms, lengths: ClipLengths): PlacedClip[] {
  let at: number = from;
  return phrase.map((clip, i) => {
    const before = phrase[i - 1];
    if (before !== undefined) at += lengths.lengthOf(before) + pauseBetween(before, clip);
    return { at: ms(at), clip };
  });
}

/** How long a phrase is heard, its pauses included. */
export function heardFor(phrase: Phrase, lengths: ClipLengths): Ms {
  let length = 0;
  phrase.forEach((clip, i) => {
    const before = phrase[i - 1];
    length += lengths.lengthOf(clip) + (before === undefined ? 0 : pauseBetween(before, clip));
  });
  return ms(length);
}

/** What a cue is about besides its words. */
export interface About {
  readonly kind: CueKind;
  readonly segment: number;
  readonly note?: string | undefined;
}

/** A cue that says a phrase from a time on. */
export function spokenCue(about: About, phrase: Phrase, at: Ms, lengths: ClipLengths): Cue {
  return cueOf(about, placeClips(phrase, at, lengths), captionOf(phrase), lengths);
}

/**
 * A cue of clips that have their places.
 *
 * @param clips at least one, in order
 */
export function cueOf(
  { kind, segment, note }: About,
  clips: readonly PlacedClip[],
  text: string,
  lengths: ClipLengths,
): Cue {
  const [first, last] = [clips[0], clips.at(-1)];
  if (first === undefined || last === undefined) throw new Error(`nothing to hear: ${kind}`);
  const end = ms(last.at + lengths.lengthOf(last.clip));
  return { kind, at: first.at, end, clips, text, segment, ...(note === undefined ? {} : { note }) };
}
