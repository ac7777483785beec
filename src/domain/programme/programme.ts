import type { Percent } from '../units.ts';
import type { Plan } from './plan.ts';

/** Longest programme file that is read, in bytes of UTF-8. */
export const PROGRAMME_MAX_BYTES = 256 * 1024;

/** What a programme leads to. */
export interface Goal {
  readonly name: string;
  readonly distanceM: number;
  /** ISO 8601 calendar date. */
  readonly date?: string;
}

/** An ability group. */
export interface Group {
  readonly id: string;
  readonly name: string;
  /** Who it is for, in a sentence. */
  readonly for: string;
}

/** One session of a group in a week: the leader's text and the plan that it says. */
export interface SessionPlan {
  readonly text: string;
  readonly plan: Plan;
}

/** A week of a programme, for all groups. */
export interface Week {
  readonly focus: string;
  /** Target for rating the whole session, in percent: not the height of its segments. */
  readonly effort: Percent;
  readonly timesPerWeek: { readonly min: number; readonly max: number };
  /** By group id. One plan stands for every session of the week. */
  readonly sessions: Readonly<Record<string, readonly SessionPlan[]>>;
  /** Which session (from 1) is done together as a group. */
  readonly together?: number;
}

/** A programme file that was read and found right; `text` is exactly what came in. */
export interface Programme {
  readonly id: string;
  readonly revision: number;
  readonly title: string;
  readonly language: string;
  /** A Monday, ISO 8601 calendar date. */
  readonly startDate?: string;
  readonly goal: Goal;
  readonly leader: {
    readonly name: string;
    readonly sign: string | null;
    readonly seal: string | null;
  };
  readonly groups: readonly Group[];
  readonly weeks: readonly Week[];
  /** Ids of the spoken catalogue, or free text that is shown and not spoken. */
  readonly reminders: readonly string[];
  /** What this revision changes, in the leader's words. */
  readonly change?: string;
  readonly text: string;
}
