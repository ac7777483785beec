import { sayDuration } from '../programme/duration.ts';
import type { Group } from '../programme/programme.ts';
import { type Ms, ms, msOfSeconds } from '../units.ts';
import type { PlanFacts } from './facts.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { largest, mostOf, type Placed, pathOf } from './outline.ts';
import type { ProgrammeWarning } from './warning.ts';

const BEHIND: Ms = msOfSeconds(REVIEW_LIMITS.behind.value);

/** A group's week against that of the group below: what both are compared by, if at all. */
function behind(own: readonly Placed[], below: readonly Placed[]): 'run' | 'brisk' | undefined {
  if (own.length === 0 || below.length === 0) return undefined;
  const most = (measure: (facts: PlanFacts) => number): readonly [number, number] => [
    largest(own, measure),
    largest(below, measure),
  ];
  const [ownWork, belowWork] = most(({ work }) => work);
  // Fewer minutes that are harder are not behind.
  if (ownWork >= belowWork) return undefined;
  const [ownRun, belowRun] = most(({ run }) => run);
  if (belowRun > 0 || ownRun > 0) return belowRun - ownRun > BEHIND ? 'run' : undefined;
  const [ownBrisk, belowBrisk] = most(({ brisk }) => brisk);
  return belowBrisk - ownBrisk > BEHIND ? 'brisk' : undefined;
}

/**
 * A group that does less than the one below it in the same week: less running (where neither
 * runs, less brisk walking), and no harder for it.
 */
export function checkOrder(
  own: readonly (readonly Placed[])[],
  below: readonly (readonly Placed[])[],
  belowGroup: Group,
): readonly ProgrammeWarning[] {
  return own.flatMap((sessions, n): ProgrammeWarning[] => {
    const others = below[n] ?? [];
    const what = behind(sessions, others);
    const most = what && mostOf(sessions, (facts) => facts[what]);
    if (most === undefined || what === undefined) return [];
    const detail = {
      what,
      below: belowGroup.name,
      now: sayDuration(ms(most.facts[what])),
      other: sayDuration(ms(largest(others, (facts) => facts[what]))),
    };
    return [{ code: 'behind', path: pathOf(most), detail }];
  });
}
