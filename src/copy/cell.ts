/** Writing one session: how it was understood, its pieces, and what can be done with it. */
import type { Item, Part, Plan, Step } from '../domain/programme/plan.ts';
import { PARTS } from '../domain/programme/plan.ts';
import type { PlanProblem } from '../domain/programme/problem.ts';
import { lengthOf } from '../domain/programme/totals.ts';
import type { Ms } from '../domain/units.ts';
import type { PieceProblem } from '../domain/workshop/plan-edits.ts';
import { effortWords } from './effort.ts';
import { planPlace, planProblem } from './plan.ts';
import { length } from './times.ts';

const SHORT: Readonly<Record<Part, string>> = {
  'warm-up': 'Warm-up',
  main: 'Main',
  'cool-down': 'Cool-down',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

function stepInWords({ duration, activity, effort, note }: Step): string {
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
  return `${SHORT[part]} ${length(lengthOf(items))}: ${inner}.`;
}

/** How a session was understood: "Warm-up 5 min: easy walk. Main 21 min: 7 sets of …". */
export const understood = (plan: Plan): string =>
  PARTS.filter((part) => plan[part].length > 0)
    .map((part) => partInWords(part, plan[part]))
    .join(' ');

export const cellWords = {
  text: 'The session in writing',
  hint: 'For example: 5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk',
  place: (problem: PlanProblem): string => capital(planPlace(problem)),
  goTo: (problem: PlanProblem): string => `Go to ${planPlace(problem)}`,
  mistake: (problem: PlanProblem): string =>
    `${capital(planPlace(problem))}: ${planProblem(problem)}`,
  take: (write: string): string => `Use “${write}”`,
  takeTotal: (write: string, total: string): string => `Use “${write}”, ${total}`,
  away: (found: string): string => `Take “${found}” away`,
  lastGood: 'This is the last version that could be read:',
  noneGood: 'Nothing of this session could be read yet.',
  keepPinned: 'Keep this session as it is when drafting again',
  tidy: 'Tidy the text',
  isTidy: 'The text is tidy',
  addSession: 'Add another session this week',
  removeSession: 'Remove this session',
} as const;

const named = (step: Step): string => `${step.activity}, ${length(step.duration)}`;

/** Names of the controls of the pieces: what is done, then to which of them. */
export const pieces = {
  title: 'Tap it together',
  replaces: 'Tapping here replaces the text above.',
  start: 'Begin with a walk in sets',
  none: 'None.',
  part: SHORT,
  step: (n: number): string => `Step ${n}`,
  sets: (n: number): string => `Sets ${n}`,
  times: (count: number, rounds: boolean): string =>
    rounds ? many(count, 'round', 'rounds') : many(count, 'set', 'sets'),
  longer: (n: number, step: Step): string => `Longer: step ${n}, ${named(step)}`,
  shorter: (n: number, step: Step): string => `Shorter: step ${n}, ${named(step)}`,
  length: (n: number, step: Step): string => `Length of step ${n}, ${step.activity}`,
  activity: (n: number): string => `Activity of step ${n}`,
  oneMore: (n: number, count: number): string => `One more: sets ${n}, ${count} times`,
  oneLess: (n: number, count: number): string => `One fewer: sets ${n}, ${count} times`,
  more: 'More',
  moreOf: (what: string): string => `More for ${what}`,
  effort: 'Effort',
  effortOf: (what: string): string => `Effort of ${what}`,
  usual: (percent: number): string => `As usual, ${percent}%`,
  percent: (percent: number): string => `${percent}%: ${effortWords(percent / 10)}`,
  note: 'Note, shown and not spoken',
  noteOf: (what: string): string => `Note for ${what}, shown and not spoken`,
  up: 'Move up',
  upOf: (what: string): string => `Move up: ${what}`,
  down: 'Move down',
  downOf: (what: string): string => `Move down: ${what}`,
  repeat: 'Repeat it',
  repeatOf: (what: string): string => `Repeat ${what}`,
  remove: 'Remove',
  removeOf: (what: string): string => `Remove ${what}`,
  addStep: 'Add a step',
  addStepTo: (where: string): string => `Add a step to ${where}`,
  addSets: 'Add sets',
  addSetsTo: (where: string): string => `Add sets to ${where}`,
  saidStep: (n: number, step: Step, total: Ms): string =>
    `Step ${n}: ${stepInWords(step)}. ${length(total)} in all.`,
  saidSets: (n: number, count: number, total: Ms): string =>
    `Sets ${n}: ${count} times. ${length(total)} in all.`,
  saidTotal: (total: Ms): string => `${length(total)} in all.`,
} as const;

export const noLength = 'Write a length such as 2 min, 90 s or 1:30.';

const PIECE_PROBLEMS: Readonly<Record<PieceProblem, string>> = {
  gone: 'This piece is not there any more.',
  'step-short': 'A step has at least 5 s.',
  'step-long': 'A step has at most 2 h 30 min.',
  'note-long': 'A note has at most 80 characters.',
  'count-few': 'Sets are done at least once.',
  'count-many': 'Sets are done at most 50 times.',
  edge: 'There is nothing further this way.',
  'main-empty': 'The main part needs at least one step.',
  'session-long': 'The session would be longer than 2 h 30 min.',
  'sets-empty': 'The sets would be empty. Remove them, or add another step first.',
  'text-long': 'The session would not fit into 2,000 characters.',
  'too-deep': 'Repeats can stand in one another twice, as rounds of sets.',
};

/** Why a piece was not changed. */
export const pieceProblem = (problem: PieceProblem): string => PIECE_PROBLEMS[problem];
