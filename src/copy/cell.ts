/** Writing one session: how it was understood, its pieces, and what can be done with it. */
import type { Item, Part, Plan, Step } from '../domain/programme/plan.ts';
import { PARTS } from '../domain/programme/plan.ts';
import type { PlanProblem } from '../domain/programme/problem.ts';
import { lengthOf } from '../domain/programme/totals.ts';
import { planPlace, planProblem } from './plan.ts';
import { length } from './times.ts';
import { capital } from './words.ts';

export const SHORT_PART: Readonly<Record<Part, string>> = {
  'warm-up': 'Warm-up',
  main: 'Main',
  'cool-down': 'Cool-down',
};

/** "2 min run at 70% (“Tall”)". */
export function stepInWords({ duration, activity, effort, note }: Step): string {
  const at = effort === undefined ? '' : ` at ${effort}%`;
  return `${length(duration)} ${activity}${at}${note === undefined ? '' : ` (“${note}”)`}`;
}

const isRounds = (items: readonly Item[]): boolean => items.some(({ kind }) => kind === 'repeat');

/** "7 sets of 1 min walk, 2 min run"; what a round holds is said one after the other. */
function itemInWords(item: Item): string {
  if (item.kind === 'step') return stepInWords(item);
  const rounds = isRounds(item.items);
  const inner = item.items.map(itemInWords).join(rounds ? ', then ' : ', ');
  if (item.count === 1) return inner;
  return rounds ? `${item.count} rounds, each of ${inner}` : `${item.count} sets of ${inner}`;
}

/** "Warm-up 5 min: easy walk": the length is not said twice of a lone step. */
function partInWords(part: Part, items: readonly Item[]): string {
  const [only, more] = items;
  const alone = only?.kind === 'step' && more === undefined;
  const inner = alone
    ? stepInWords(only).slice(length(only.duration).length + 1)
    : items.map(itemInWords).join('; ');
  return `${SHORT_PART[part]} ${length(lengthOf(items))}: ${inner}.`;
}

/** How a session was understood: "Warm-up 5 min: easy walk. Main 21 min: 7 sets of …". */
export const understood = (plan: Plan): string =>
  PARTS.filter((part) => plan[part].length > 0)
    .map((part) => partInWords(part, plan[part]))
    .join(' ');

export const cellWords = {
  text: 'The session in writing',
  hint: 'For example: 5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk',
  goTo: (problem: PlanProblem): string => `Go to ${planPlace(problem)}`,
  mistake: (problem: PlanProblem): string =>
    `${capital(planPlace(problem))}: ${planProblem(problem)}`,
  take: (write: string): string => `Use “${write}”`,
  takeTotal: (write: string, total: string): string => `Use “${write}”, ${total}`,
  away: (found: string): string => `Take “${found}” away`,
  lastGood: (totals: string): string => `The last version that could be read: ${totals}.`,
  noneGood: 'Nothing of this session could be read yet.',
  keepPinned: 'Keep this session as it is when drafting again',
  tidy: 'Tidy the text',
  isTidy: 'The text is tidy',
  addSession: 'Add another session this week',
  removeSession: 'Remove this session',
} as const;
