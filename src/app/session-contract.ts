/** What the screens may know and ask of the session: its store, and which session it is. */
import type { Cue } from '../domain/cues/cue.ts';
import type { LeadChoice } from '../domain/lead/choose.ts';
import type { LeadMark } from '../domain/lead/cut-off.ts';
import type { LeadPlan } from '../domain/lead/lead-plan.ts';
import type { Gap, LaneName, Medium, Purpose, StateName } from '../domain/session/session.ts';
import type { Segment, Timeline } from '../domain/timeline/timeline.ts';
import type { Ms, Percent } from '../domain/units.ts';

/** Which session: week and session count from 1. */
export interface Choice {
  readonly programmeId: string;
  readonly groupId: string;
  readonly week: number;
  readonly session: number;
}

/** A session of several groups, as it is led. */
export interface Led {
  /** Of the sheet that it is led from. */
  readonly key: string;
  readonly programme: { readonly id: string; readonly title: string };
  readonly choice: LeadChoice;
  readonly plan: LeadPlan;
  /** Leading was cut off: it goes on from here by the clock. */
  readonly from?: LeadMark;
}

/** What this device remembers of leading; nothing of it is about people. */
export interface LedBefore {
  readonly key: string;
  readonly choice: LeadChoice;
  /** Leading was under way and was not seen to end. */
  readonly mark?: LeadMark;
}

export type { Medium };

/** What the session is doing; before it is made ready there is none. */
export type PlayerState = 'idle' | 'composing' | StateName;

/** Everything a screen shows of the session at one moment. */
export interface SessionView {
  readonly state: PlayerState;
  readonly medium: Medium;
  readonly purpose: Purpose;
  readonly choice?: Choice;
  /** Leading: all groups. The rest of the view is of the whole, from change to change of any group. */
  readonly lead?: Led;
  readonly programmeTitle: string;
  readonly groupName: string;
  readonly planText: string;
  readonly target: Percent;
  readonly timeline?: Timeline;
  readonly lane: LaneName;
  /** Place in the session (the place to go back to, while in another lane). */
  readonly position: Ms;
  readonly segment?: Segment;
  /** Left in the segment (or in the extra minute), never below 0. */
  readonly left: Ms;
  readonly next?: Segment;
  /** What is being said or was said last. */
  readonly caption: string;
  /** The cue that is being heard now. */
  readonly cue?: Cue;
  /** Which controls make sense now. */
  readonly offers: {
    readonly hold: boolean;
    readonly goOn: boolean;
    readonly oneMore: boolean;
    readonly walkNow: boolean;
    readonly skip: boolean;
    readonly back: boolean;
    readonly coolDown: 'jump' | 'five-minutes' | null;
    /** Present for 10 s after a skip or walk-now. */
    readonly undo: 'skip' | 'walk-now' | null;
  };
  readonly gap?: Omit<Gap, 'lost' | 'track'>;
  /** The sound was asked for and takes its time to begin. */
  readonly late?: true;
  /** Present while a start is waited for that was agreed ahead. */
  readonly wait?: {
    /** UTC milliseconds. */
    readonly startsAt: number;
    /** Until then, never below 0: at 0 and in silence the start was missed. */
    readonly left: Ms;
  };
  /** True while "something is wrong" is open (the session is holding). */
  readonly wrong: boolean;
  /** Storage could not be written: the session goes on from memory. */
  readonly unsaved: boolean;
  /** The session cannot start here because another tab runs one. */
  readonly busyElsewhere: boolean;
  /** Wake lock held (watching). */
  readonly awake: boolean;
}

/** A session found in the journal at the start of the app. */
export interface Unfinished {
  readonly choice: Choice;
  readonly position: Ms;
  readonly total: Ms;
  readonly startedAt: number;
  readonly lastSeenAt: number;
  /**
   * Up to 30 min: go on first; up to 6 h: keep what was done first. Later ones are saved by
   * themselves. `wait`: it had not begun, and its start (`startedAt`) may be yet to come.
   */
  readonly offer: 'go-on' | 'keep' | 'wait';
}

/** The session, as the screens see it and what they may ask of it. */
export interface SessionStore {
  readonly view: SessionView;
  readonly unfinished?: Unfinished;
  /** Id of the log entry that the ended session left. */
  readonly entryId?: string;
  readonly ledBefore?: LedBefore;
  /** Composes the track for a session; safe to call again. Never starts sound. */
  prepare(what: Choice | Led, medium: Medium): Promise<void>;
  /** Two minutes with a cue now and then, to be locked in a pocket. */
  preparePocketCheck(): Promise<void>;
  /**
   * Must be called inside a tap. Without a time it starts now; before `at` (UTC milliseconds, at
   * most 30 min ahead) the sound waits in the track and begins by itself.
   */
  start(at?: number): void;
  playCueNow(): void;
  hold(): void;
  goOn(): void;
  oneMore(): void;
  walkNow(): void;
  skip(): void;
  back(): void;
  undo(): void;
  toCoolDown(): void;
  end(): void;
  somethingIsWrong(): void;
  /** Closes "something is wrong": the session stays on hold. */
  allRight(): void;
  /** The running screen is being watched (or no longer): it is kept on, whatever carries the session. */
  watch(on: boolean): void;
  /** After a gap: go on from the place, or jump to where the wall clock says. */
  afterGap(answer: 'go-on' | 'catch-up'): void;
  /** Answers what to do with `unfinished`. */
  recover(answer: 'go-on' | 'keep'): Promise<void>;
  /** Leaves an ended or prepared session. */
  close(): void;
}
