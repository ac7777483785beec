import { sayDuration } from '../programme/duration.ts';
import type { Ms } from '../units.ts';
import { ms, msOfSeconds } from '../units.ts';
import type { PlanFacts } from './facts.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { mostOf, type Outline, type Placed, pathOf } from './outline.ts';
import type { ProgrammeWarning } from './warning.ts';

/** Percent of the main parts that a group runs in the last weeks up to the event. */
function runShare(weeks: readonly (readonly Placed[])[]): number {
  const last = weeks.slice(-REVIEW_LIMITS.lastWeeks.value).flat();
  const sum = (measure: (facts: PlanFacts) => number): number =>
    last.reduce((total, { facts }) => total + measure(facts), 0);
  const main = sum((facts) => facts.main);
  return main === 0 ? 0 : (sum(({ mainRun }) => mainRun) / main) * 100;
}

/**
 * Metres of a session at the assumed paces: milliseconds over seconds per kilometre. Standing and
 * stretching lead nowhere.
 */
export function metresOf({ run, walk }: Pick<PlanFacts, 'run' | 'walk'>): number {
  const { runningPace, walkingPace } = REVIEW_LIMITS;
  return run / runningPace.value + walk / walkingPace.value;
}

/** How long a distance takes at the mix of walking and running of a session. */
const timeOf = (metres: number, facts: PlanFacts): Ms =>
  ms((metres / metresOf(facts)) * (facts.run + facts.walk));

function checkContinuous(
  sessions: readonly Placed[],
  share: number,
  isMostDemanding: boolean,
): readonly ProgrammeWarning[] {
  const { nearlyAllRunning, mostlyRunning, continuous } = REVIEW_LIMITS;
  if (share < (isMostDemanding ? mostlyRunning : nearlyAllRunning).value) return [];
  const most = mostOf(sessions, ({ stretch }) => stretch);
  if (most === undefined || most.facts.stretch >= msOfSeconds(continuous.value)) return [];
  const detail = {
    now: sayDuration(most.facts.stretch),
    asked: sayDuration(msOfSeconds(continuous.value)),
  };
  return [{ code: 'never-continuous', path: pathOf(most), detail }];
}

function checkDistance(
  sessions: readonly Placed[],
  share: number,
  { goal }: Outline,
): readonly ProgrammeWarning[] {
  const { eventGrowth, eventGrowthWalking, mostlyRunning } = REVIEW_LIMITS;
  const growth = share >= mostlyRunning.value ? eventGrowth : eventGrowthWalking;
  const most = mostOf(sessions, metresOf);
  if (most === undefined) return [];
  const metres = metresOf(most.facts);
  if (metres === 0) return [];
  if (goal.distanceM * 100 <= metres * (100 + growth.value)) return [];
  const { runningPace, walkingPace } = REVIEW_LIMITS;
  const detail = {
    now: sayDuration(most.facts.total),
    walking: sayDuration(msOfSeconds(walkingPace.value)),
    ...(most.facts.run > 0 ? { running: sayDuration(msOfSeconds(runningPace.value)) } : {}),
    metres: Math.round(metres),
    goal: goal.distanceM,
    event: goal.name,
    minutes: Math.round(timeOf(goal.distanceM, most.facts) / 60_000),
  };
  return [{ code: 'distance-short', path: pathOf(most), detail }];
}

/**
 * Where a group has come to by the event. Running on without a walk is asked of the most demanding
 * group when it mostly runs in the last weeks, and of others whose walks have nearly gone: for the
 * rest, running and walking in turn is the aim itself. The distance is asked of all, with the
 * paces assumed in `limits.ts`.
 */
export function checkArrival(
  outline: Outline,
  weeks: readonly (readonly Placed[])[],
  isMostDemanding: boolean,
): readonly ProgrammeWarning[] {
  if (weeks.length < REVIEW_LIMITS.arrivalWeeks.value) return [];
  // While the last week is still to be written, nothing can be said of where it leads.
  if (weeks.at(-1)?.length === 0) return [];
  const share = runShare(weeks);
  const sessions = weeks.flat();
  return [
    ...checkContinuous(sessions, share, isMostDemanding),
    ...checkDistance(sessions, share, outline),
  ];
}
