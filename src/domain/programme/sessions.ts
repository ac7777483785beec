import * as v from 'valibot';
import { parsePlan } from './parse.ts';
import type { PathStep } from './path.ts';
import { pathText } from './path.ts';
import type { ProgrammeProblem } from './problem.ts';
import type { SessionPlan } from './programme.ts';
import { LIMITS, PlansShape } from './shape.ts';

const isFitting = (texts: string | readonly string[]): boolean =>
  typeof texts === 'string' || (texts.length >= 1 && texts.length <= LIMITS.sessions);

/** Reads each text; a problem carries its path in the file and its place in the plan. */
function readPlans(
  texts: string | readonly string[],
  path: readonly PathStep[],
  problems: ProgrammeProblem[],
): readonly SessionPlan[] {
  const list = typeof texts === 'string' ? [texts] : texts;
  return list.flatMap((text, n): SessionPlan[] => {
    const plan = parsePlan(text);
    if (plan.ok) return [{ text, plan: plan.value }];
    const steps = typeof texts === 'string' ? path : [...path, n];
    problems.push({ code: 'plan', path: pathText(steps), plan: plan.error });
    return [];
  });
}

/**
 * The sessions of a week by group id. Only the file's own keys are looked at, so a key such as
 * `__proto__` is just an unknown group.
 */
export function readSessions(
  sessions: Readonly<Record<string, unknown>>,
  groups: readonly { readonly id: string }[],
  path: readonly PathStep[],
  problems: ProgrammeProblem[],
): Readonly<Record<string, readonly SessionPlan[]>> {
  const known = new Set(groups.map((group) => group.id));
  const read: [string, readonly SessionPlan[]][] = [];
  for (const [id, value] of Object.entries(sessions)) {
    const at = [...path, id];
    if (!known.has(id)) {
      problems.push({
        code: 'group-unknown',
        path: pathText(at),
        detail: { groups: [...known].join(', ') },
      });
      continue;
    }
    const texts = v.safeParse(PlansShape, value);
    if (!texts.success)
      problems.push({ code: 'type', path: pathText(at), detail: { expected: 'plan' } });
    else if (!isFitting(texts.output))
      problems.push({ code: 'list', path: pathText(at), detail: { min: 1, max: LIMITS.sessions } });
    else read.push([id, readPlans(texts.output, at, problems)]);
  }
  for (const id of known) {
    if (!Object.hasOwn(sessions, id))
      problems.push({
        code: 'sessions-missing',
        path: pathText([...path, id]),
        detail: { group: id },
      });
  }
  return Object.fromEntries(read);
}
