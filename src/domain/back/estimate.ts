import type { LogEntry } from '../log/entry.ts';
import type { Day } from '../programme/calendar.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { type Ms, ms } from '../units.ts';
import { EVENT_LIMITS } from './event-limits.ts';
import { mixOf, type Speeds, speedOfMix } from './mix.ts';
import { type SecondsPerKm, speedOf } from './pace.ts';
import { type RiegelProblem, riegel } from './riegel.ts';
import { dayOfEntry } from './week.ts';

/** A time lies somewhere in it; never one number, for nobody knows the day. */
export interface Estimate {
  readonly low: Ms;
  readonly high: Ms;
}

const share = (percent: number): number => percent / 100;

/** The slower and the faster end of how somebody walks and runs. */
export interface SpeedRange {
  readonly slow: Speeds;
  readonly fast: Speeds;
}

/** For somebody of whom nothing is known. */
export const ASSUMED_SPEEDS: SpeedRange = {
  slow: {
    walk: speedOf(EVENT_LIMITS.walkSlow.value),
    run: speedOf(EVENT_LIMITS.runSlow.value),
  },
  fast: {
    walk: speedOf(EVENT_LIMITS.walkFast.value),
    run: speedOf(EVENT_LIMITS.runFast.value),
  },
};

/** Around paces that a person gave. */
export function speedsAround(walk: SecondsPerKm, run: SecondsPerKm): SpeedRange {
  const spread = share(EVENT_LIMITS.ownPaceSpread.value);
  const times = (factor: number): Speeds => ({
    walk: speedOf(walk * factor),
    run: speedOf(run * factor),
  });
  return { slow: times(1 + spread), fast: times(1 - spread) };
}

/**
 * The event walked and run in turn as in a session. The fast end takes the mix of its main part at
 * the faster speeds, the slow end that of the whole session, warm-up and cool-down included, at
 * the slower ones.
 *
 * @returns `no-moving` for a session with neither walking nor running in it
 */
export function estimateFromSpeeds(
  metres: number,
  session: Timeline,
  { slow, fast }: SpeedRange,
): Result<Estimate, 'no-moving'> {
  const whole = mixOf(session);
  const main = mixOf(session, 'main');
  const speeds = [
    speedOfMix(whole, slow),
    speedOfMix(whole, fast),
    speedOfMix(main, slow),
    speedOfMix(main, fast),
  ].filter((speed) => speed !== undefined);
  if (speeds.length === 0) return fail('no-moving');
  const time = (speed: number): Ms => ms((metres / speed) * 1000);
  return ok({ low: time(Math.max(...speeds)), high: time(Math.min(...speeds)) });
}

/** An estimate from sessions whose distance was measured. */
export interface Measured extends Estimate {
  /** The sessions that it rests on, latest first. */
  readonly entries: readonly LogEntry[];
}

/** Slower than any walking and faster than any running of hours: a slip of the pen, m/s. */
const PLAUSIBLE = { from: 0.5, to: 6.5 } as const;

function speedOfEntry({ distanceM = 0, activeSeconds, doneSeconds }: LogEntry): number {
  const seconds = Math.max(activeSeconds, doneSeconds);
  return seconds > 0 ? distanceM / seconds : 0;
}

const isMeasured = (entry: LogEntry): boolean => {
  const speed = speedOfEntry(entry);
  const long = (entry.distanceM ?? 0) >= EVENT_LIMITS.measuredMetres.value;
  return long && speed >= PLAUSIBLE.from && speed <= PLAUSIBLE.to;
};

/** The latest sessions whose distance is known, latest first. */
export function measuredSessions(entries: readonly LogEntry[], today: Day): readonly LogEntry[] {
  const since = today - 7 * EVENT_LIMITS.measuredWeeks.value;
  return entries
    .filter((entry) => isMeasured(entry) && dayOfEntry(entry) > since)
    .sort((a, b) => b.startedAt - a.startedAt || (a.id < b.id ? -1 : 1))
    .slice(0, EVENT_LIMITS.measuredSessions.value);
}

/**
 * The event at the speeds of whole sessions whose distance the person knows: from a little faster
 * than the fastest of them to somewhat slower than the slowest.
 */
export function estimateFromMeasured(
  metres: number,
  entries: readonly LogEntry[],
  today: Day,
): Result<Measured, 'no-measured'> {
  const measured = measuredSessions(entries, today);
  if (measured.length === 0) return fail('no-measured');
  const times = measured.map((entry) => (metres / speedOfEntry(entry)) * 1000);
  const faster = 1 - share(EVENT_LIMITS.measuredFaster.value);
  const slower = 1 + share(EVENT_LIMITS.measuredSlower.value);
  return ok({
    low: ms(Math.min(...times) * faster),
    high: ms(Math.max(...times) * slower),
    entries: measured,
  });
}

/** For those who race: around what an all-out trial gives by Riegel's formula. */
export function estimateFromTrial(
  metres: number,
  trial: { readonly time: Ms; readonly metres: number },
): Result<Estimate, RiegelProblem> {
  const found = riegel(trial.time, trial.metres, metres);
  if (!found.ok) return found;
  return ok({
    low: ms(found.value * (1 - share(EVENT_LIMITS.trialFaster.value))),
    high: ms(found.value * (1 + share(EVENT_LIMITS.trialSlower.value))),
  });
}

/** Minutes after midnight at which an estimate ends, whole minutes, rounded outwards. */
export const finishBetween = (
  startMinute: number,
  { low, high }: Estimate,
): readonly [number, number] => [
  (startMinute + Math.floor(low / 60_000)) % 1440,
  (startMinute + Math.ceil(high / 60_000)) % 1440,
];
