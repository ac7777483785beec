import type { Segment, Turn } from '../timeline/timeline.ts';
import { type Phrase, SAY, sayRound, sayRoundOnly, saySet, saySetOnly } from './phrases.ts';
import { isShort } from './short.ts';

/** What is said of sets and rounds at the start of a segment; both empty where nothing is. */
export interface TurnWords {
  readonly full: Phrase;
  /** Without "of m". */
  readonly short: Phrase;
}

/** What there is to tell at a segment. */
interface News {
  anew?: boolean;
  round?: Turn;
  set?: Turn;
  last?: boolean;
}

/**
 * The words of sets and rounds for every segment, in the order of the segments.
 *
 * A turn that begins with a segment too short for words is told at its first one that is not.
 */
export function turnWords(segments: readonly Segment[]): TurnWords[] {
  const last = lastSets(segments);
  const news: News[] = segments.map(() => ({}));
  segments.forEach((segment, i) => {
    const before = segments[i - 1];
    const { round, set } = segment;
    if (round !== undefined && !sameRound(segment, before)) {
      const told = news[tellAt(segments, i, sameRound)] as News;
      told.round = round;
      if (beginsNewSets(segments, i)) told.anew = true;
    }
    if (set !== undefined && !sameSet(segment, before)) {
      const told = news[tellAt(segments, i, sameSet)] as News;
      told.set = set;
      if (last.has(i)) told.last = true;
      if (beginsNewSets(segments, i)) told.anew = true;
    }
  });
  return news.map(inWords);
}

const inWords = ({ anew, round, set, last }: News): TurnWords => {
  const first = anew ? SAY.newSets : [];
  const closing = last ? SAY.lastSet : [];
  return {
    full: [...first, ...(round ? sayRound(round) : []), ...(set ? saySet(set) : []), ...closing],
    short: [
      ...first,
      ...(round ? sayRoundOnly(round) : []),
      ...(last ? closing : set ? saySetOnly(set) : []),
    ],
  };
};

type Same = (a: Segment, b: Segment | undefined) => boolean;

const sameBlock: Same = (a, b) => b !== undefined && a.part === b.part && a.block === b.block;
const sameRound: Same = (a, b) => sameBlock(a, b) && a.round?.n === b?.round?.n;
const sameSet: Same = (a, b) => sameRound(a, b) && a.set?.n === b?.set?.n;

/** The first segment of a turn in which there is time for words, or its first of all. */
function tellAt(segments: readonly Segment[], begin: number, same: Same): number {
  const first = segments[begin] as Segment;
  for (let i = begin; ; i++) {
    const segment = segments[i];
    if (segment === undefined || !same(first, segment)) return begin;
    if (!isShort(segment)) return i;
  }
}

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
    if (segment.set && !sameSet(segment, segments[i - 1])) found.set(segment.part, i);
  });
  return new Set(found.values());
}
