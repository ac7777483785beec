import { COUNT_MAX, DEPTH_MAX, SESSION_MAX, STEP_MIN, TEXT_MAX } from '../programme/bounds.ts';
import { formatPlan } from '../programme/format.ts';
import type { Item, Plan } from '../programme/plan.ts';
import { planLength } from '../programme/totals.ts';
import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import type { Ms } from '../units.ts';
import { msOfSeconds } from '../units.ts';
import { newSets, newStep } from './new-pieces.ts';
import type { PiecePlace } from './pieces.ts';
import { above, inside, itemAt, itemsIn, repeatsDeep, spliced, withItems } from './pieces.ts';
import type { StepChange, StepProblem } from './step-change.ts';
import { changedStep } from './step-change.ts';

/** Why a piece cannot be changed so. `src/copy/cell.ts` has a sentence for each. */
export type PieceProblem =
  | StepProblem
  /** Nothing like that stands there. */
  | 'gone'
  | 'count-few'
  | 'count-many'
  /** Nothing is above the first piece of all, and nothing below the last. */
  | 'edge'
  | 'main-empty'
  | 'session-long'
  /** The piece is the last that its sets hold. */
  | 'sets-empty'
  | 'text-long'
  | 'too-deep';

/** A plan after an edit, and the piece that the hand is at now. */
export interface Edited {
  readonly plan: Plan;
  /** A part, where no piece is left. */
  readonly at: PiecePlace;
}
/** A plan after a tap, or why it stays as it was. */
export type EditResult = Result<Edited, PieceProblem>;

/** A plan that stays within the bounds of the shorthand, so that its text can be read again. */
export function bounded(plan: Plan, at: PiecePlace): EditResult {
  if (plan.main.length === 0) return fail('main-empty');
  if (planLength(plan) > SESSION_MAX) return fail('session-long');
  return [...formatPlan(plan)].length > TEXT_MAX ? fail('text-long') : ok({ plan, at });
}

/** The plan with other items where one stood. */
function replaced(plan: Plan, at: PiecePlace, items: readonly Item[]): Plan {
  const n = at.path.at(-1) ?? 0;
  const siblings = itemsIn(plan, above(at)) ?? [];
  return withItems(plan, above(at), spliced(siblings, n, 1, ...items));
}

/** Change the length, activity, effort or note of a step. */
export function changeStep(plan: Plan, at: PiecePlace, change: StepChange): EditResult {
  const item = itemAt(plan, at);
  if (item?.kind !== 'step') return fail('gone');
  const step = changedStep(item, change);
  return step.ok ? bounded(replaced(plan, at, [step.value]), at) : step;
}

const FINE = 15;
const COARSE = 30;
/** From here on the finer step is no help: nobody tells 4 min 15 s from 4 min 30 s. */
const COARSE_FROM = 120;

/**
 * The next longer (1) or shorter (-1) length that is easily said: multiples of 15 s up to two
 * minutes, of 30 s above; 5 s, the shortest step there is, below 15 s.
 */
export function nextLength(length: Ms, by: 1 | -1): Ms {
  const seconds = length / 1000;
  if (by === 1) {
    const grid = seconds < COARSE_FROM ? FINE : COARSE;
    return msOfSeconds((Math.floor(seconds / grid) + 1) * grid);
  }
  const grid = seconds <= COARSE_FROM ? FINE : COARSE;
  const shorter = msOfSeconds((Math.ceil(seconds / grid) - 1) * grid);
  return length > STEP_MIN && shorter < STEP_MIN ? STEP_MIN : shorter;
}

/** A step a little longer or shorter. */
export function changeLength(plan: Plan, at: PiecePlace, by: 1 | -1): EditResult {
  const item = itemAt(plan, at);
  if (item?.kind !== 'step') return fail('gone');
  return changeStep(plan, at, { duration: nextLength(item.duration, by) });
}

/** How many times a repeat is done. */
export function changeCount(plan: Plan, at: PiecePlace, count: number): EditResult {
  const item = itemAt(plan, at);
  if (item?.kind !== 'repeat') return fail('gone');
  if (!(count >= 1)) return fail('count-few');
  if (count > COUNT_MAX) return fail('count-many');
  return bounded(replaced(plan, at, [{ ...item, count: Math.round(count) }]), at);
}

function added(plan: Plan, into: PiecePlace, item: Item): EditResult {
  const items = itemsIn(plan, into);
  if (items === undefined) return fail('gone');
  return bounded(withItems(plan, into, [...items, item]), inside(into, items.length));
}

/** One more step at the end of a part or a repeat. */
export const addStep = (plan: Plan, into: PiecePlace): EditResult =>
  added(plan, into, newStep(plan, into));

/** Sets of two steps at the end of a part. */
export const addSets = (plan: Plan, part: PiecePlace['part']): EditResult =>
  added(plan, { part, path: [] }, newSets(plan));

/** A piece becomes what is repeated, twice to begin with: a step becomes sets, sets become rounds. */
export function repeatPiece(plan: Plan, at: PiecePlace): EditResult {
  const item = itemAt(plan, at);
  if (item === undefined) return fail('gone');
  if (at.path.length - 1 + repeatsDeep(item) + 1 > DEPTH_MAX) return fail('too-deep');
  return bounded(replaced(plan, at, [{ kind: 'repeat', count: 2, items: [item] }]), at);
}

/** Takes a piece away, and a repeat with the last that it held. The next piece is at hand then. */
export function removePiece(plan: Plan, at: PiecePlace): EditResult {
  if (itemAt(plan, at) === undefined) return fail('gone');
  const from = above(at);
  const siblings = itemsIn(plan, from) ?? [];
  if (siblings.length === 1 && from.path.length > 0) return removePiece(plan, from);
  const n = Math.min(at.path.at(-1) ?? 0, siblings.length - 2);
  return bounded(replaced(plan, at, []), n < 0 ? from : inside(from, n));
}
