import { pathText } from '../programme/path.ts';
import type { Week } from '../programme/programme.ts';
import { lookBack } from './growth.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { mostOf, type Placed, pathOf } from './outline.ts';
import type { ProgrammeWarning } from './warning.ts';

/** Percent of points on the scale from 0 to 10. */
const percentOf = (points: number): number => points * 10;
const pointsOf = (percent: number): number => percent / 10;

/** Weeks whose target is far above those of the weeks before. */
export const checkTargets = (weeks: readonly Week[]): readonly ProgrammeWarning[] =>
  weeks.flatMap(({ effort }, n): ProgrammeWarning[] => {
    if (n === 0) return [];
    const before = Math.max(...lookBack(weeks, n).map((week) => week.effort));
    if (effort - before <= percentOf(REVIEW_LIMITS.targetRise.value)) return [];
    return [
      {
        code: 'target-jump',
        path: pathText(['weeks', n, 'effort']),
        detail: { now: pointsOf(effort), before: pointsOf(before) },
      },
    ];
  });

/** Hard steps far above the hardest that a group had in any week before. */
export function checkSteps(weeks: readonly (readonly Placed[])[]): readonly ProgrammeWarning[] {
  let most: number | undefined;
  return weeks.flatMap((sessions): ProgrammeWarning[] => {
    const now = mostOf(sessions, ({ hardest }) => hardest);
    if (now === undefined) return [];
    const { hardest } = now.facts;
    const before = most;
    most = Math.max(most ?? 0, hardest);
    if (before === undefined) return [];
    if (hardest < percentOf(REVIEW_LIMITS.hardFrom.value)) return [];
    if (hardest - before <= percentOf(REVIEW_LIMITS.stepRise.value)) return [];
    const detail = { now: pointsOf(hardest), before: pointsOf(before) };
    return [{ code: 'step-jump', path: pathOf(now), detail }];
  });
}
