import { NOTE_MAX, SESSION_MAX, STEP_MIN } from '../programme/bounds.ts';
import { fold } from '../programme/fold.ts';
import type { Activity, Step } from '../programme/plan.ts';
import { firstForbidden } from '../programme/unseen.ts';
import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import type { Ms, Percent } from '../units.ts';
import { msOfSeconds } from '../units.ts';

/** What is to be different about a step; what is left out stays. */
export interface StepChange {
  readonly duration?: Ms;
  readonly activity?: Activity;
  /** `usual`, or what is no number: the activity's own. */
  readonly effort?: Percent | 'usual';
  /** Empty: none. */
  readonly note?: string;
}
/** Why a step was not changed. */
export type StepProblem = 'step-short' | 'step-long' | 'note-long';

/**
 * A note as the shorthand can hold it: on one line, with no quote that would end it, nothing that
 * cannot be seen, and no space around it.
 */
export function cleanNote(typed: string): string {
  const seen = [...typed.replace(/\s+/g, ' ')].filter(
    (letter) => firstForbidden(letter, { lines: false }) === undefined,
  );
  const plain = seen.filter((letter) => fold(letter).text !== '');
  return plain
    .map((letter) => (fold(letter).text === '"' ? "'" : letter))
    .join('')
    .trim();
}

/** A step changed within its bounds. Lengths are whole seconds, efforts whole percent from 0 to 100. */
export function changedStep(step: Step, change: StepChange): Result<Step, StepProblem> {
  const duration = msOfSeconds(Math.round((change.duration ?? step.duration) / 1000));
  if (duration < STEP_MIN) return fail('step-short');
  if (duration > SESSION_MAX) return fail('step-long');
  const effort = change.effort ?? step.effort ?? 'usual';
  const note = change.note === undefined ? (step.note ?? '') : cleanNote(change.note);
  if ([...note].length > NOTE_MAX) return fail('note-long');
  return ok({
    kind: 'step',
    duration,
    activity: change.activity ?? step.activity,
    ...(Number.isFinite(effort)
      ? { effort: Math.round(Math.min(100, Math.max(0, Number(effort)))) }
      : {}),
    ...(note === '' ? {} : { note }),
  });
}
