import type { Part } from '../programme/plan.ts';
import { isRunning } from '../programme/plan.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import type { MetresPerSecond } from './pace.ts';

/** Time walked and time run. Standing and stretching lead nowhere. */
export interface Mix {
  readonly walk: Ms;
  readonly run: Ms;
}

/** How fast somebody walks and runs. */
export interface Speeds {
  readonly walk: MetresPerSecond;
  readonly run: MetresPerSecond;
}

/** How much of a timeline, or of one part of it, is walked and run. */
export function mixOf({ segments }: Timeline, part?: Part): Mix {
  let [walk, run] = [0, 0];
  for (const segment of segments) {
    if (part !== undefined && segment.part !== part) continue;
    const length = segment.end - segment.start;
    if (isRunning(segment.activity)) run += length;
    else if (segment.activity.endsWith('walk')) walk += length;
  }
  return { walk: ms(walk), run: ms(run) };
}

/** Metres of a mix: each time at its own speed. */
export const metresOfMix = ({ walk, run }: Mix, speeds: Speeds): number =>
  (walk * speeds.walk + run * speeds.run) / 1000;

/** The speed of a mix as a whole; nothing when no time was spent in it. */
export function speedOfMix(mix: Mix, speeds: Speeds): MetresPerSecond | undefined {
  const time = mix.walk + mix.run;
  return time === 0 ? undefined : (metresOfMix(mix, speeds) * 1000) / time;
}
