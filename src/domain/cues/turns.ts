import type { Segment } from '../timeline/timeline.ts';
import { type Phrase, SAY, sayRound, sayRoundOnly, saySet, saySetOnly } from './phrases.ts';

/** What is said of sets and rounds where a segment begins: both empty where no turn begins. */
export interface TurnWords {
  readonly full: Phrase;
  /** Without "of m". */
  readonly short: Phrase;
}

/** The words of sets and rounds for every segment, in the order of the segments. */
export function turnWords(segments: readonly Segment[]): TurnWords[] {
  const last = lastSets(segments);
  return segments.map((segment, i) => {
    const before = segments[i - 1];
    const round = segment.round && beginsRound(segment, before) ? segment.round : undefined;
    const set = segment.set && beginsSet(segment, before) ? segment.set : undefined;
    const anew = (round ?? set) !== undefined && beginsNewSets(segments, i) ? SAY.newSets : [];
    const closing = last.has(i) ? SAY.lastSet : [];
    return {
      full: [...anew, ...(round ? sayRound(round) : []), ...(set ? saySet(set) : []), ...closing],
      short: [
        ...anew,
        ...(round ? sayRoundOnly(round) : []),
        ...(closing.length > 0 ? closing : set ? saySetOnly(set) : []),
      ],
    };
  });
}

const sameBlock = (a: Segment, b: Segment | undefined): boolean =>
  b !== undefined && a.part === b.part && a.block === b.block;

const sameRound = (a: Segment, b: Segment | undefined): boolean =>
  sameBlock(a, b) && a.round?.n === b?.round?.n;

const beginsRound = (a: Segment, before: Segment | undefined): boolean => !sameRound(a, before);

const beginsSet = (a: Segment, before: Segment | undefined): boolean =>
  !sameRound(a, before) || a.set?.n !== before?.set?.n || a.set?.of !== before?.set?.of;

/** A second repeat of the main part: after another one, or after other sets of the same round. */
function beginsNewSets(segments: readonly Segment[], i: number): boolean {
  const segment = segments[i];
  if (segment === undefined || segment.part !== 'main' || segment.block === undefined) return false;
  if (!sameBlock(segment, segments[i - 1])) return segment.block > 0;
  if (segment.set?.n !== 1) return false;
  for (let j = i - 1; sameRound(segment, segments[j]); j--) {
    if (segments[j]?.set !== undefined) return true;
  }
  return false;
}

/** Where the very last set of each part begins. */
function lastSets(segments: readonly Segment[]): Set<number> {
  const found = new Map<string, number>();
  segments.forEach((segment, i) => {
    if (segment.set && beginsSet(segment, segments[i - 1])) found.set(segment.part, i);
  });
  return new Set(found.values());
}
