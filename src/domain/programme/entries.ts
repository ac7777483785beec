/** What kinds of entries look like: questions about the rough tree. */
import type { RawEntry, RawItem, RawRepeat } from './raw.ts';

/** A step, a repeat, or a count that went astray. */
export const isItem = (entry: RawEntry | undefined): entry is RawItem =>
  entry !== undefined && entry.kind !== 'label' && entry.kind !== 'separator';

/** `6 x 2 min run`, which says nothing of what follows it. */
export const isBare = (entry: RawItem): boolean =>
  entry.kind === 'repeat' && entry.unit?.kind === 'step' && entry.counts.length === 1;

/** A bracket that does not say how many times. */
export const isLoneBracket = (entry: RawEntry | undefined): boolean =>
  entry?.kind === 'repeat' && entry.counts.length === 0 && entry.unit?.kind === 'bracket';

/** A bracket with words for the runner in it, and no time. */
export const isCommentBracket = (entry: RawEntry | RawRepeat | undefined): boolean =>
  entry?.kind === 'repeat' &&
  entry.counts.length === 0 &&
  entry.unit?.kind === 'bracket' &&
  entry.unit.entries.length > 0 &&
  entry.unit.entries.every((inner) => inner.kind === 'step' && inner.duration === null);

/** What may be meant as the recovery when it stands right behind a bare repeat. */
export const isRecovery = (entry: RawEntry | undefined): boolean =>
  (isLoneBracket(entry) && !isCommentBracket(entry)) ||
  (entry?.kind === 'step' && entry.duration !== null);
