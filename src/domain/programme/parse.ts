import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import { SESSION_MAX, TEXT_MAX } from './bounds.ts';
import { sayDuration } from './duration.ts';
import { fold, placeAt } from './fold.ts';
import { parse } from './grammar.generated.js';
import { sayLeftover } from './leftover.ts';
import type { Plan } from './plan.ts';
import type { PlanCode, PlanProblem } from './problem.ts';
import { Report } from './report.ts';
import { readSections } from './sections.ts';
import { planLength } from './totals.ts';
import { firstForbidden } from './unseen.ts';

/** A problem of the text as a whole. */
const refuse = (
  text: string,
  code: PlanCode,
  found: string,
  detail?: PlanProblem['detail'],
): PlanProblem => ({
  code,
  place: placeAt(text, 0, text.length),
  found,
  ...(detail ? { detail } : {}),
});

/** What makes a text unreadable before the grammar is asked. */
function unreadable(text: string): PlanProblem | undefined {
  if (text.length > TEXT_MAX && [...text].length > TEXT_MAX)
    return refuse(text, 'text-long', `${[...text].length}`, { limit: TEXT_MAX });
  const bad = firstForbidden(text, { lines: true });
  if (bad === undefined) return undefined;
  const letter = text.codePointAt(bad) ?? 0;
  const found = `U+${letter.toString(16).toUpperCase().padStart(4, '0')}`;
  return { code: 'bad-character', place: placeAt(text, bad, bad + 1), found };
}

/**
 * Read a session's shorthand. Bounds are checked before anything is expanded, so a hostile text
 * costs no more than its 2,000 characters. The problem is the first in the order of the text.
 */
export function parsePlan(text: string): Result<Plan, PlanProblem> {
  const early = unreadable(text);
  if (early) return fail(early);
  const folded = fold(text);
  if (folded.text.trim() === '') return fail(refuse(text, 'empty', ''));
  const { peg$result: session, peg$currPos: stopped } = parse(folded.text, { peg$library: true });
  const report = new Report(text, folded);
  const plan = readSections(session.entries, report);
  if (stopped < folded.text.trimEnd().length) sayLeftover(stopped, report, session.entries.at(-1));
  if (report.first !== undefined || plan === undefined)
    return fail(report.first ?? refuse(text, 'empty', ''));
  const length = planLength(plan);
  if (length > SESSION_MAX) {
    const limit = sayDuration(SESSION_MAX);
    return fail(refuse(text, 'session-long', sayDuration(length), { limit }));
  }
  return ok(plan);
}
