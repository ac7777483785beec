import type { ClipLengths, CuePlan, Talk } from '../cues/cue.ts';
import { changeCues } from './change-cues.ts';
import type { LeadPlan } from './lead-plan.ts';
import { endOfAll } from './moments.ts';
import { tickCues } from './ticks.ts';
import { timeLeftCues } from './time-left.ts';

/** How long the clips of the voice are, and how much it says. */
export interface LeadCueOptions {
  readonly lengths: ClipLengths;
  /** `few`: changes alone, without their lengths and without the time left. Usual when left out. */
  readonly talk?: Talk;
}

/**
 * Everything that is heard in a session that is led together, and when: tones, calls and words,
 * in order, none overlapping. Same plan, same cues.
 *
 * @throws when `lengths` does not know a clip: a pack is checked before it is used
 */
export function planLeadCues(plan: LeadPlan, { lengths, talk = 'usual' }: LeadCueOptions): CuePlan {
  const total = endOfAll(plan);
  const changes = changeCues({ plan, talk, lengths });
  const left = talk === 'few' ? [] : timeLeftCues(plan, changes, lengths);
  const heard = [...changes, ...left].sort((a, b) => a.at - b.at);
  const ticks = plan.tick ? tickCues(heard, total, lengths) : [];
  return { cues: [...heard, ...ticks].sort((a, b) => a.at - b.at), total };
}
