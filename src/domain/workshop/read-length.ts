import { parsePlan } from '../programme/parse.ts';
import type { PlanProblem } from '../programme/problem.ts';
import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import type { Ms } from '../units.ts';

/** Stands behind a length, so that the shorthand itself reads it. */
const ACTIVITY = 'walk';

/**
 * A length typed alone, in any way of the shorthand; a bare number counts minutes. Within the
 * bounds of a step.
 *
 * @returns the shorthand's own problem, or nothing in its place when it is no length at all
 */
export function readLength(typed: string): Result<Ms, PlanProblem | undefined> {
  const bare = /^\s*\d{1,3}\s*$/.test(typed);
  const text = bare ? `${typed.trim()} min` : typed.trim();
  if (text === '') return fail(undefined);
  const read = parsePlan(`${text} ${ACTIVITY}`);
  if (!read.ok) {
    const { offset, length } = read.error.place;
    return fail(offset + length <= text.length ? read.error : undefined);
  }
  const [only, more] = Object.values(read.value).flat();
  const plain = only?.kind === 'step' && only.activity === ACTIVITY && only.note === undefined;
  return plain && more === undefined ? ok(only.duration) : fail(undefined);
}
