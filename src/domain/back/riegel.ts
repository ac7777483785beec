import { fail, ok, type Result } from '../result.ts';
import { type Ms, ms, secondsOf } from '../units.ts';
import { EVENT_LIMITS } from './event-limits.ts';

/**
 * `trial-time`, `event-time`: outside of the 210 to 13,800 s that the formula stands for, for the
 * trial or for what comes out. `distance`: not above 0.
 */
export type RiegelProblem = 'trial-time' | 'event-time' | 'distance';

const inside = (time: number): boolean =>
  time >= EVENT_LIMITS.trialShortest.value && time <= EVENT_LIMITS.trialLongest.value;

/**
 * How long another distance takes, when both are run as hard as one can: T2 = T1 (D2 / D1)^1.06.
 *
 * Source: Riegel 1981, American Scientist 69(3):285-90. It was fitted to records and trained
 * runners; walking and running in turn is not an all-out effort, and it must not be used for it.
 * Well calibrated from a mile to a half marathon (Vickers and Vertosick 2016).
 *
 * @param time of the trial, @param metres of the trial, @param eventMetres asked for
 */
export function riegel(time: Ms, metres: number, eventMetres: number): Result<Ms, RiegelProblem> {
  if (!(metres > 0 && eventMetres > 0)) return fail('distance');
  if (!inside(secondsOf(time))) return fail('trial-time');
  const other = time * (eventMetres / metres) ** EVENT_LIMITS.trialPower.value;
  return inside(other / 1000) ? ok(ms(other)) : fail('event-time');
}
