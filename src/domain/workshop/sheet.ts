import type { Goal, Group } from '../programme/programme.ts';
import type { Percent } from '../units.ts';

/** One session as it is being written: it may be wrong at the moment. */
export interface Cell {
  /** Exactly as typed. */
  readonly text: string;
  /** The last text of this cell that could be read, while `text` cannot. */
  readonly good?: string;
  /** The leader wants it as it is: drafting again leaves it alone. */
  readonly pinned?: true;
}

/** A week in writing: its sessions are texts that may be wrong. */
export interface SheetWeek {
  readonly focus: string;
  /** Target for rating the whole session, in percent. */
  readonly effort: Percent;
  readonly timesPerWeek: { readonly min: number; readonly max: number };
  /** By group id. One cell stands for every session of the week. */
  readonly sessions: Readonly<Record<string, readonly Cell[]>>;
  /** Which session (from 1) is done together as a group. */
  readonly together?: number;
}

/** A programme in writing. Unlike a programme file it may have gaps and mistakes. */
export interface Sheet {
  /** The programme's id, the same through all its revisions. */
  readonly id: string;
  readonly title: string;
  readonly language: string;
  /** A Monday, ISO 8601 calendar date. */
  readonly startDate?: string;
  readonly goal: Goal;
  /** The leader's name, as participants see it. */
  readonly leader: string;
  readonly groups: readonly Group[];
  readonly weeks: readonly SheetWeek[];
  /** Ids of the spoken catalogue, or free text that is shown and not spoken. */
  readonly reminders: readonly string[];
  /** Top-level keys of a file that this version does not know: written back as they came. */
  readonly kept?: Readonly<Record<string, unknown>>;
}

/** Where a session stands. Week and session count from 0, as in the file's paths. */
export interface CellPlace {
  readonly week: number;
  readonly group: string;
  readonly session: number;
}
