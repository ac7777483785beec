import type { Activity, Plan, Repeat, Step } from '../programme/plan.ts';
import { DEFAULT_EFFORT, isRunning, PARTS } from '../programme/plan.ts';
import { ms } from '../units.ts';
import type { PiecePlace } from './pieces.ts';
import { itemsIn, stepsOf } from './pieces.ts';

const MINUTE = 60_000;
const step = (minutes: number, activity: Activity): Step => ({
  kind: 'step',
  duration: ms(minutes * MINUTE),
  activity,
});

/** The hardest that this plan asks for anywhere; a brisk walk where nothing is harder than a walk. */
function hardestOf(plan: Plan): Activity {
  const all = PARTS.flatMap((part) => stepsOf(plan[part]));
  return all.reduce<Activity>(
    (hardest, { activity }) =>
      DEFAULT_EFFORT[activity] > DEFAULT_EFFORT[hardest] ? activity : hardest,
    'brisk walk',
  );
}

/** A step to begin with: like the last where it is put; nothing harder than the plan has already. */
export function newStep(plan: Plan, into: PiecePlace): Step {
  const last = (itemsIn(plan, into) ?? []).at(-1);
  if (last?.kind === 'step') return step(last.duration / MINUTE, last.activity);
  return into.part === 'main' ? step(2, hardestOf(plan)) : step(5, 'easy walk');
}

/** Sets to begin with: a minute to recover, a minute of the hardest that the plan has. */
export function newSets(plan: Plan): Repeat {
  const hard = hardestOf(plan);
  const easy = isRunning(hard) ? 'walk' : 'easy walk';
  return { kind: 'repeat', count: 4, items: [step(1, easy), step(1, hard)] };
}

/** A session to begin with where nothing is written yet: all of it a walk. */
export const FIRST_PLAN: Plan = {
  'warm-up': [step(5, 'easy walk')],
  main: [{ kind: 'repeat', count: 5, items: [step(2, 'brisk walk'), step(1, 'walk')] }],
  'cool-down': [step(5, 'easy walk')],
};
