import type { ClipLengths, Cue } from '../cues/cue.ts';
import { TONE } from '../cues/phrases.ts';
import { cueOf } from '../cues/speak.ts';
import { type Ms, ms } from '../units.ts';

/** Loudspeakers fall asleep in quiet: some after minutes (common practice, no source). */
const EVERY = 20_000;

/** Least quiet between a tick and anything else. */
const APART = 1000;

/**
 * A soft tick every twenty seconds of quiet, which keeps a loudspeaker awake.
 *
 * @param others everything else that is heard, in order, none overlapping
 * @param total no tick comes after it
 */
export function tickCues(others: readonly Cue[], total: Ms, lengths: ClipLengths): Cue[] {
  const length = lengths.lengthOf(TONE.tick);
  const ticks: Cue[] = [];
  let from = 0;
  for (const { at: to, end } of [...others, { at: total, end: total }]) {
    const until = Math.min(to, total) - length - APART;
    for (let at = from + EVERY; at <= until; at += EVERY) {
      const segment = others.findLast((other) => other.at < at)?.segment ?? 0;
      const clips = [{ at: ms(at), clip: TONE.tick }];
      ticks.push(cueOf({ kind: 'tick', segment }, clips, 'Tick', lengths));
    }
    from = end;
  }
  return ticks;
}
