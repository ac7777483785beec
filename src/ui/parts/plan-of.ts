import { parsePlan } from '../../domain/programme/parse.ts';
import type { Plan } from '../../domain/programme/plan.ts';

const parsed = new Map<string, Plan | undefined>();

/** The plan that a stored text says, or nothing when it does not parse (any more). */
export function planOf(text: string): Plan | undefined {
  if (!parsed.has(text)) {
    const result = parsePlan(text);
    parsed.set(text, result.ok ? result.value : undefined);
  }
  return parsed.get(text);
}
