import type { ClipLengths, PlacedClip } from '../cues/cue.ts';
import { captionOf, PHRASE_PAUSE_MS, type Phrase, pauseBetween } from '../cues/phrases.ts';
import type { ClipId } from '../cues/vocabulary.ts';
import { type Ms, ms } from '../units.ts';

/** Who does what, and for how long where that is said. */
export interface Clause {
  /** "Groups two and three"; empty for words that are for everybody. */
  readonly who: Phrase;
  readonly what: Phrase;
  readonly length?: Phrase | undefined;
}

/** A clip and the quiet before it. */
interface Word {
  readonly clip: ClipId;
  readonly pause: Ms;
}

/** Clauses that are said in one go. */
export interface Sentence {
  readonly words: readonly Word[];
  /** "Group 1: run, two minutes. Groups 2 and 3: walk." */
  readonly text: string;
}

/** Between who and what: shorter than between two clauses, so that they are heard as one. */
const COLON_PAUSE = ms(144);

/** Between two clauses. */
const CLAUSE_PAUSE = ms(360);

/** Clauses as one sentence, in their order. */
export function sentenceOf(clauses: readonly Clause[]): Sentence {
  const words = clauses.flatMap(({ who, what, length = [] }) => [
    ...spoken(who, CLAUSE_PAUSE),
    ...spoken(what, who.length === 0 ? CLAUSE_PAUSE : COLON_PAUSE),
    ...spoken(length, PHRASE_PAUSE_MS),
  ]);
  return { words, text: clauses.map(textOf).join(' ') };
}

const spoken = (phrase: Phrase, first: Ms): Word[] =>
  phrase.map((clip, i) => {
    const before = phrase[i - 1];
    return { clip, pause: before === undefined ? first : pauseBetween(before, clip) };
  });

function textOf({ who, what, length = [] }: Clause): string {
  if (who.length === 0) return captionOf(what);
  const told = [what, length].filter((phrase) => phrase.length > 0);
  return `${withoutStop(captionOf(who))}: ${told.map(within).join(', ')}.`;
}

const withoutStop = (caption: string): string => caption.replace(/\.$/, '');
const within = (phrase: Phrase): string => {
  const text = withoutStop(captionOf(phrase));
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
};

/** How long a sentence is heard; nothing for one without words. */
export const lengthOfSentence = ({ words }: Sentence, lengths: ClipLengths): Ms =>
  ms(
    words.reduce(
      (sum, { clip, pause }, i) => sum + (i === 0 ? 0 : pause) + lengths.lengthOf(clip),
      0,
    ),
  );

/** The clips of a sentence from a time on. */
export function placeSentence({ words }: Sentence, from: Ms, lengths: ClipLengths): PlacedClip[] {
  let at: number = from;
  return words.map(({ clip, pause }, i) => {
    if (i > 0) at += pause;
    const placed = { at: ms(at), clip };
    at += lengths.lengthOf(clip);
    return placed;
  });
}
