/** A session as pieces to be tapped: names of the controls, what a tap did, and why it did nothing. */
import type { Step } from '../domain/programme/plan.ts';
import type { Ms } from '../domain/units.ts';
import type { PieceProblem } from '../domain/workshop/plan-edits.ts';
import { SHORT_PART, stepInWords } from './cell.ts';
import { effortWords } from './effort.ts';
import { many } from './grammar.ts';
import { length } from './times.ts';

const named = (step: Step): string => `${step.activity}, ${length(step.duration)}`;

/** Names of the controls of the pieces: what is done, then to which of them. */
export const pieces = {
  title: 'Tap it together',
  replaces: 'Tapping here replaces the text above.',
  start: 'Begin with a walk in sets',
  none: 'None.',
  part: SHORT_PART,
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
