import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import { SESSION_MAX, TEXT_MAX } from './bounds.ts';
import { sayLeftover } from './build.ts';
import { sayDuration } from './duration.ts';
import { fold, placeAt } from './fold.ts';
import { formatPlan } from './format.ts';
import { parse } from './grammar.generated.js';
import type { Plan } from './plan.ts';
import type { PlanCode, PlanProblem } from './problem.ts';
import { Report } from './report.ts';
import { readSections } from './sections.ts';
import { planLength } from './totals.ts';
import { firstForbidden } from './unseen.ts';

function refuse(text: string, code: PlanCode, detail: PlanProblem['detail'], at = 0): PlanProblem {
  const place = placeAt(text, at, code === 'bad-character' ? at + 1 : text.length);
  return { code, place, found: '', ...(detail ? { detail } : {}) };
}

/** What makes a text unreadable before the grammar is asked. */
function unreadable(text: string): PlanProblem | undefined {
  if (text.length > TEXT_MAX && [...text].length > TEXT_MAX)
    return refuse(text, 'text-long', { limit: TEXT_MAX, length: [...text].length });
  const bad = firstForbidden(text, { lines: true });
  if (bad === undefined) return undefined;
  const letter = text.codePointAt(bad) ?? 0;
  const character = `U+${letter.toString(16).toUpperCase().padStart(4, '0')}`;
  return refuse(text, 'bad-character', { character }, bad);
}

/**
 * Read a session's shorthand. Bounds are checked before anything is expanded, so a hostile text
 * costs no more than its 2,000 characters. The problem is the first in the order of the text.
 */
export function parsePlan(text: string): Result<Plan, PlanProblem> {
  const early = unreadable(text);
  if (early) return fail(early);
  const folded = fold(text);
  if (folded.text.trim() === '') return fail(refuse(text, 'empty', undefined));
  const { peg$result: session, peg$currPos: stopped } = parse(folded.text, { peg$library: true });
  const report = new Report(text, folded);
  const plan = readSections(session.entries, report);
  if (stopped < folded.text.trimEnd().length) sayLeftover(stopped, report, session.entries.at(-1));
  if (report.first !== undefined || plan === undefined)
    return fail(report.first ?? refuse(text, 'empty', undefined));
  const length = planLength(plan);
  if (length > SESSION_MAX) {
    const detail = { length: sayDuration(length), limit: sayDuration(SESSION_MAX) };
    return fail(refuse(text, 'session-long', detail));
  }
  return ok(plan);
}

/** The text as the formatter writes it: what *tidy* offers. */
export function tidy(text: string): Result<string, PlanProblem> {
  const plan = parsePlan(text);
  return plan.ok ? ok(formatPlan(plan.value)) : plan;
}
