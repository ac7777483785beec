import type { PocketRecord } from '../../app/contract.ts';

/** What comes of a pocket check. `good`: heard to the end without gaps, locked for long enough. */
export type PocketVerdict = 'good' | 'not-locked' | 'gaps' | 'stopped';

/** A stretch this long without movement can swallow a countdown (common practice, no source). */
export const SILENCE_LIMIT_MS = 3000;
/** Half of the two minutes: less tells nothing about a locked phone. */
export const HIDDEN_ENOUGH_MS = 60_000;

/** What a pocket check showed, worst first. */
export function pocketVerdict(record: PocketRecord): PocketVerdict {
  if (!record.heardToEnd) return 'stopped';
  if (record.longestSilenceMs > SILENCE_LIMIT_MS) return 'gaps';
  return record.hiddenMs < HIDDEN_ENOUGH_MS ? 'not-locked' : 'good';
}
