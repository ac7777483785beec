import { type Ms, ms } from '../units.ts';
import type { Cue } from './cue.ts';
import type { Squeezed } from './squeeze.ts';

/** One thing that is said, with the countdown that leads to it. */
export interface Stop {
  /** Where it begins in the short track: its countdown, where it has one. */
  readonly from: Ms;
  /** Its time in the session: the boundary, where a countdown leads to one. */
  readonly session: Ms;
  /** The words. */
  readonly cue: Cue;
}

/** What is said in a session, in order: the places that a leader steps through. */
export function stopsOf({ plan, knots }: Squeezed): Stop[] {
  const stops: Stop[] = [];
  let countdown: { readonly from: Ms; readonly boundary: Ms } | undefined;
  plan.cues.forEach((cue, i) => {
    const session = knots[2 * i]?.session ?? cue.at;
    if (cue.kind === 'countdown') {
      const long = cue.clips.at(-1)?.at ?? cue.at;
      countdown = { from: cue.at, boundary: ms(session + long - cue.at) };
      return;
    }
    stops.push({ from: countdown?.from ?? cue.at, session: countdown?.boundary ?? session, cue });
    countdown = undefined;
  });
  return stops;
}

/** Index of the stop that a place of the short track belongs to; the first before any. */
export const stopAt = (stops: readonly Stop[], at: Ms): number =>
  Math.max(
    0,
    stops.findLastIndex(({ from }) => from <= at),
  );
