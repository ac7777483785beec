/**
 * What the screens may know and ask. Each part is a zustand store that the composition root
 * makes; stores are caches of what the journal, the log and the settings say.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { Cue, Talk } from '../domain/cues/cue.ts';
import type { LeadChoice } from '../domain/lead/choose.ts';
import type { LeadMark } from '../domain/lead/cut-off.ts';
import type { LeadPlan } from '../domain/lead/lead-plan.ts';
import type { LogEntry } from '../domain/log/entry.ts';
import type { Following } from '../domain/log/following.ts';
import type { Programme } from '../domain/programme/programme.ts';
import type { Gap, LaneName, Medium, Purpose, StateName } from '../domain/session/session.ts';
import type { Segment, Timeline } from '../domain/timeline/timeline.ts';
import type { Ms, Percent } from '../domain/units.ts';
import type { BoardState } from './board-contract.ts';
import type { PublishingState, ReceivedState } from './exchange-contract.ts';
import type { Hearing } from './hearing.ts';
import type { Clock } from './ports.ts';
import type { Records } from './records-contract.ts';
import type { TellState } from './tell-contract.ts';
import type { WorkshopState } from './workshop-contract.ts';

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

// ---- programmes ----------------------------------------------------------------------------

/** The programmes of this phone. */
export interface ProgrammesState {
  readonly ready: boolean;
  readonly programmes: readonly Programme[];
  /** Group chosen per programme id. */
  readonly chosen: Readonly<Record<string, string>>;
  chooseGroup(programmeId: string, groupId: string): Promise<void>;
}

// ---- settings ------------------------------------------------------------------------------

/** How this phone is set. Stored as it is: what is new may be left out. */
export interface Settings {
  readonly talk: Talk;
  readonly mode: 'hear' | 'watch';
  readonly vibration: boolean;
  readonly appearance: 'auto' | 'light' | 'dark';
  /** Local date on which the cautions were read. */
  readonly cautionsReadOn?: string;
  /** What the last pocket check saw. */
  readonly pocketCheck?: PocketRecord;
  /** Ask for the effort again, half an hour or more afterwards. Kept one way for comparison. */
  readonly askAgain?: boolean;
  /** Id of the latest entry that the person did not want to be asked about again. */
  readonly notAgain?: string;
  /** The person chose to go on without the pocket check. */
  readonly pocketCheckSkipped?: boolean;
  /** Local date on which what others told goes next; empty: nothing of it is here, or it is kept. */
  readonly boardsGoOn?: string;
}

/** What a pocket check saw. */
export interface PocketRecord {
  readonly at: number;
  readonly userAgent: string;
  readonly installed: boolean;
  readonly heardToEnd: boolean;
  /** How long the page was hidden during the check. */
  readonly hiddenMs: number;
  /** Longest stretch in which the sound's place did not move with the wall clock. */
  readonly longestSilenceMs: number;
  readonly events: readonly string[];
}

/** The settings, and the one way to change them. */
export interface SettingsState {
  readonly settings: Settings;
  change(part: Partial<Settings>): Promise<void>;
}

// ---- voice pack ----------------------------------------------------------------------------

/** How far the voice is on its way here. */
export type PackState =
  | { readonly name: 'coming'; readonly loaded: number; readonly total: number }
  | { readonly name: 'ready' }
  | { readonly name: 'missing' | 'damaged' };

/** The voice, and fetching it again. */
export interface PackStore {
  readonly pack: PackState;
  retry(): Promise<void>;
}

// ---- the session ---------------------------------------------------------------------------

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
  readonly gap?: Omit<Gap, 'lost'>;
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

// ---- log -----------------------------------------------------------------------------------

/** The sessions that were done. */
export interface LogState {
  readonly ready: boolean;
  /** Newest first. */
  readonly entries: readonly LogEntry[];
  /** An answer, a setting or a programme waits that could not be written; it is tried again. */
  readonly unsaved?: boolean;
  /** What is stored could not be read yet; it is tried again, and nothing is written over it. */
  readonly unread?: boolean;
  /** Writes an entry, or what is new about the one with its id. */
  write(entry: LogEntry): Promise<void>;
  /** For good: only on the person's own word. */
  remove(entryId: string): Promise<void>;
}

// ---- how a person goes through their programmes ----------------------------------------------

/** How each programme is gone through. */
export interface FollowingState {
  readonly ready: boolean;
  /** By programme id; a programme that was never paused, moved or decided about has none. */
  readonly following: Readonly<Record<string, Following>>;
  change(following: Following): Promise<void>;
}

// ---- the device ----------------------------------------------------------------------------

/** What this phone and this browser are and can do. */
export interface DeviceState {
  readonly installed: boolean;
  readonly platform: 'ios' | 'android' | 'other';
  /** Name-free hint that the page runs inside another app's browser. */
  readonly embedded: boolean;
  readonly canVibrate: boolean;
  readonly canWakeLock: boolean;
  readonly canShareFiles: boolean;
  /** The browser offers to install: call it inside a tap. */
  readonly install?: () => Promise<void>;
  readonly persisted?: boolean;
}

/** New versions of the app. */
export interface UpdatesState {
  /** Everything needed is on this phone. */
  readonly offlineReady: boolean;
  /** A new version waits; never set while a session is under way. */
  readonly waiting: boolean;
  /** Takes the new version, unless a session is under way here or in another tab. */
  apply(): void;
}

/** A session of any programme, in writing or received, as it is to be heard. */
export interface PieceToHear {
  readonly timeline: Timeline;
  readonly reminders: readonly string[];
  /** How hard the whole session is meant to feel. */
  readonly target: Percent;
  /** What its files are called, without the ending. */
  readonly fileName: string;
}

export type { Hearing };

/** Both files are the session without lanes, shared or saved; without the voice there are none. */
export interface Exporter {
  /** A session of a programme on this phone, with the cues of the settings. */
  track(choice: Choice, what: 'mp3' | 'vtt'): Promise<void>;
  /** Any session, with as many cues as asked for. */
  save(piece: PieceToHear, talk: Talk, what: 'mp3' | 'vtt'): Promise<void>;
  /** From cue to cue, skipping the quiet, to be heard on this page. Starts no sound. */
  hear(piece: PieceToHear, talk: Talk): Promise<Hearing>;
}

/** Everything that the screens are given. */
export interface App {
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: StoreApi<SettingsState>;
  readonly pack: StoreApi<PackStore>;
  readonly session: StoreApi<SessionStore>;
  readonly log: StoreApi<LogState>;
  readonly following: StoreApi<FollowingState>;
  readonly device: StoreApi<DeviceState>;
  readonly updates: StoreApi<UpdatesState>;
  readonly exporter: Exporter;
  /** What time it is, and where: screens read no clock of their own. */
  readonly clock: Pick<Clock, 'now' | 'zoneTime'>;
  /** A random id, for an entry that is written by hand. */
  readonly newId: () => string;
  readonly received: StoreApi<ReceivedState>;
  readonly publishing: StoreApi<PublishingState>;
  /** Fetched when a leader first writes; rejects when it cannot be fetched, and may be asked again. */
  readonly workshop: () => Promise<StoreApi<WorkshopState>>;
  /** What comes back to a leader; fetched as the workshop is. */
  readonly board: () => Promise<StoreApi<BoardState>>;
  /** Fetched when somebody wants to tell their leader something; rejects and may be asked again. */
  readonly telling: () => Promise<StoreApi<TellState>>;
  /** Calendar, log files, backup and restore; as the workshop, fetched when first asked for. */
  readonly records: () => Promise<Records>;
}
