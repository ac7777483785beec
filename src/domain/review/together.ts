import { sayDuration } from '../programme/duration.ts';
import type { Week } from '../programme/programme.ts';
import { ms, msOfSeconds } from '../units.ts';
import { factsOf } from './facts.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { type Outline, pathOf, sessionsIn } from './outline.ts';
import type { ProgrammeWarning } from './warning.ts';

const TOGETHER = msOfSeconds(REVIEW_LIMITS.together.value);

/** The value that most have; of several, the largest. */
function usual(values: readonly number[]): number {
  const count = (value: number): number => values.filter((other) => other === value).length;
  return [...values].sort((a, b) => count(b) - count(a) || b - a)[0] ?? 0;
}

/**
 * Groups whose main set ends before or after the others' in the session done together, all from
 * one start: by how much, against the time at which most groups end.
 */
export function checkTogether(
  { groups }: Outline,
  week: Week,
  n: number,
): readonly ProgrammeWarning[] {
  const { together } = week;
  if (together === undefined) return [];
  const ends = groups.flatMap(({ id }) => {
    const list = sessionsIn(week, id);
    const session = list.length === 1 ? list[0] : list[together - 1];
    if (session === undefined) return [];
    const place = { week: n, group: id, session: together - 1, count: list.length };
    return [{ place, end: factsOf(session.plan).mainEnd }];
  });
  const common = usual(ends.map(({ end }) => end));
  return ends
    .filter(({ end }) => Math.abs(end - common) > TOGETHER)
    .map(({ place, end }) => ({
      code: 'ends-apart',
      path: pathOf(place),
      detail: {
        apart: sayDuration(ms(Math.abs(end - common))),
        when: end < common ? 'before' : 'after',
        end: sayDuration(end),
        common: sayDuration(ms(common)),
      },
    }));
}
