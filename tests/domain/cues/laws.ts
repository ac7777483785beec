import fc from 'fast-check';
import type { Cue } from '../../../src/domain/cues/cue.ts';
import { captionOf, sayActivity } from '../../../src/domain/cues/phrases.ts';
import type { Segment } from '../../../src/domain/timeline/timeline.ts';
import type { Heard } from './voices.ts';

/** Asserts a law for any sessions. */
export const forAny = (heard: fc.Arbitrary<Heard>, holds: (it: Heard) => void): void =>
  fc.assert(fc.property(heard, holds), { numRuns: 100 });

export const lengthOf = ({ start, end }: Segment): number => end - start;
export const isShort = (segment: Segment): boolean => lengthOf(segment) < 10_000;
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** The activity as the voice says it. */
export const nameOf = ({ activity }: Segment): string => captionOf(sayActivity(activity));
export const spoken = (cues: readonly Cue[]): Cue[] =>
  cues.filter(({ kind }) => kind !== 'countdown');
export const segmentOf = ({ timeline }: Heard, cue: Cue): Segment =>
  timeline.segments[cue.segment] as Segment;
/** The words where each segment begins. */
export const openings = ({ plan }: Heard): Cue[] =>
  plan.cues.filter((cue) => (cue.kind === 'start' && cue.at === 0) || cue.kind === 'change');
