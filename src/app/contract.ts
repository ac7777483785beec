/**
 * What the screens may know and ask. Each part is a zustand store that the composition root
 * makes; stores are caches of what the journal, the log and the settings say.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { Talk } from '../domain/cues/cue.ts';
import type { LogEntry } from '../domain/log/entry.ts';
import type { Following } from '../domain/log/following.ts';
import type { Programme } from '../domain/programme/programme.ts';
import type { Timeline } from '../domain/timeline/timeline.ts';
import type { Percent } from '../domain/units.ts';
import type { BoardState } from './board-contract.ts';
import type { PublishingState, ReceivedState } from './exchange-contract.ts';
import type { Hearing } from './hearing.ts';
import type { Clock } from './ports.ts';
import type { Records } from './records-contract.ts';
import type { Choice, SessionStore } from './session-contract.ts';
import type { TellState } from './tell-contract.ts';
import type { WorkshopState } from './workshop-contract.ts';

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
