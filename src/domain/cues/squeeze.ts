import { FRAME_MS, type Ms, ms } from '../units.ts';
import type { Cue, CuePlan, PlacedClip } from './cue.ts';

/** The same moment in the short track and in the session. */
interface Knot {
  readonly short: Ms;
  readonly session: Ms;
}

/** A session from cue to cue. */
export interface Squeezed {
  /** The cues of the session, in their order, at their places in the short track. */
  readonly plan: CuePlan;
  /** Start and end of every cue, in order of time in both. */
  readonly knots: readonly Knot[];
}

/** Quiet that is left between two cues: enough to tell them apart (common practice, no source). */
export const QUIET_LEFT = ms(900);

/**
 * A cue plan with its quiet cut out: every cue as it is, and between two of them no more than
 * some quiet.
 *
 * Nothing within a cue is touched, so a countdown stays with its long tone. The quiet is cut by
 * whole frames: a sound then lies in the short track exactly as it lies in the session's.
 *
 * @param quiet what is left of a longer gap; up to one frame more, because frames are whole
 */
export function squeeze(plan: CuePlan, quiet: Ms = QUIET_LEFT): Squeezed {
  const cues: Cue[] = [];
  const knots: Knot[] = [];
  let end = 0;
  let cut = 0;
  for (const cue of plan.cues) {
    cut += Math.max(0, Math.floor((cue.at - end - quiet) / FRAME_MS)) * FRAME_MS;
    end = Math.max(end, cue.end);
    const moved = earlier(cue, cut);
    cues.push(moved);
    knots.push({ short: moved.at, session: cue.at }, { short: moved.end, session: cue.end });
  }
  return { plan: { cues, total: ms(end - cut) }, knots };
}

const earlier = (cue: Cue, by: number): Cue => ({
  ...cue,
  at: ms(cue.at - by),
  end: ms(cue.end - by),
  clips: cue.clips.map(({ clip, at }): PlacedClip => ({ clip, at: ms(at - by) })),
});

/**
 * The place in the session of a place in the short track. Where quiet was cut, what is left of it
 * stands for all of it.
 */
export const sessionPlace = ({ knots }: Squeezed, at: Ms): Ms => between(knots, at, 'short');

/** The place in the short track of a place in the session. */
export const shortPlace = ({ knots }: Squeezed, at: Ms): Ms => between(knots, at, 'session');

/** Straight from knot to knot, and no further than the last. */
function between(knots: readonly Knot[], at: Ms, from: keyof Knot): Ms {
  const to = from === 'short' ? 'session' : 'short';
  let before: Knot = { short: ms(0), session: ms(0) };
  for (const knot of knots) {
    if (at < knot[from]) {
      const share = (at - before[from]) / (knot[from] - before[from]);
      return ms(before[to] + Math.max(0, share) * (knot[to] - before[to]));
    }
    before = knot;
  }
  return before[to];
}
