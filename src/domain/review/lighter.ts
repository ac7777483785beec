import { sayDuration } from '../programme/duration.ts';
import { pathText } from '../programme/path.ts';
import { ms } from '../units.ts';
import { lookBack } from './growth.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { type Outline, type Placed, pathOf } from './outline.ts';
import type { ProgrammeWarning } from './warning.ts';

/**
 * Milliseconds of main parts in a week done as often as it may be: with fewer sessions written
 * than the week has times, they are done in turn.
 */
function fullness({ weeks }: Outline, n: number, sessions: readonly Placed[]): number {
  if (sessions.length === 0) return 0;
  const sum = sessions.reduce((total, { facts }) => total + facts.main, 0);
  return (sum / sessions.length) * Math.max(weeks[n]?.timesPerWeek.max ?? 1, 1);
}

/**
 * Groups whose week before the event holds hardly less than the fullest of the weeks before; one
 * warning for the whole week when it is so for all of them.
 */
export function checkLighter(
  outline: Outline,
  groups: readonly (readonly (readonly Placed[])[])[],
  event: number,
): readonly ProgrammeWarning[] {
  const full = groups.flatMap((weeks): readonly (ProgrammeWarning | undefined)[] => {
    const each = weeks.map((sessions, n) => fullness(outline, n, sessions));
    const [now, before] = [each[event] ?? 0, Math.max(0, ...lookBack(each, event))];
    const [first] = weeks[event] ?? [];
    if (first === undefined || before === 0) return [];
    if (now * 100 <= before * (100 - REVIEW_LIMITS.lighter.value)) return [undefined];
    const detail = {
      now: sayDuration(ms(now)),
      before: sayDuration(ms(before)),
      event: outline.goal.name,
    };
    return [{ code: 'not-lighter', path: pathOf(first), detail }];
  });
  const found = full.filter((warning) => warning !== undefined);
  const [one] = found;
  if (one === undefined || found.length < full.length || full.length < 2) return found;
  return [
    { code: 'not-lighter', path: pathText(['weeks', event]), detail: { event: outline.goal.name } },
  ];
}
