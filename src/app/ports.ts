/**
 * What the app needs of the world. The composition root fills these from the platform, tests
 * from drivers that are turned by hand.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { LogEntry } from '../domain/log/entry.ts';
import type { Following } from '../domain/log/following.ts';
import type { ZoneTime } from '../domain/log/local-date.ts';
import type { Person } from '../domain/log/person.ts';
import type { Result } from '../domain/result.ts';
import type { Change } from '../domain/session/effect.ts';
import type { Button, SessionEvent, Sign } from '../domain/session/event.ts';
import type { Lease } from '../domain/session/lease.ts';
import type { VoicePack } from '../domain/track/pack.ts';
import type { Ms } from '../domain/units.ts';
import type { DeviceState, Settings, UpdatesState } from './contract.ts';
import type { ExchangePorts } from './exchange-ports.ts';
import type { LedBefore } from './session-contract.ts';

/** The one place where time is read. */
export interface Clock {
  /** UTC milliseconds. */
  now(): number;
  /** Milliseconds from some moment on, never put back. */
  monotonic(): number;
  zoneTime(utc: number): ZoneTime;
  /** Calls again and again, as a hint: late or not at all while the page sleeps. */
  every(milliseconds: number, job: () => void): () => void;
  /** Calls once. */
  later(milliseconds: number, job: () => void): () => void;
}

/** What a transport says. `hidden` and `frozen` are the page's. */
export type Signal = Sign | Button | 'previous' | 'next' | 'stop' | 'hidden' | 'frozen';

/** What carries a session: one audio element, or the clock of a session on the screen. */
export interface Transport {
  /** Gets a track ready at its start, in silence. Without bytes only the length counts. */
  load(track: { readonly bytes?: Uint8Array<ArrayBuffer>; readonly total: Ms }): void;
  /** Inside a tap, or while sound is heard. A refusal comes as `paused`. */
  play(): void;
  pause(): void;
  seek(to: Ms): void;
  /** Builds the element anew with the same track. Inside a tap. */
  rebuild(at: Ms): void;
  /** Where it is; while a seek is under way, where it goes. */
  place(): Ms;
  /** Lets the track go. */
  close(): void;
  listen(listener: (signal: Signal) => void): () => void;
}

/** What the lock screen says of a session. */
export interface NowPlaying {
  readonly title: string;
  readonly artist: string;
  readonly album: string;
}

/** What the phone shows of a session while it is locked. */
export interface LockScreen {
  show(now: NowPlaying): void;
  /** Place and length of the session only, never of a lane. */
  place(at: Ms, total: Ms, going: boolean): void;
  clear(): void;
}

/** A programme that came in, as it lies on this phone. */
export interface StoredProgramme {
  /** Under which this phone keeps it: the programme's own id, or that with a number behind a point. */
  readonly id: string;
  /** Exactly as it came in. */
  readonly text: string;
  readonly cameAt: number;
  /** Verified when it came: over the text in UTF-8, by `key`. None: unsigned. */
  readonly signature?: string;
  readonly key?: string;
  /** Keys that its leader has replaced. */
  readonly retired?: readonly string[];
}

/** Why something could not be read or written. */
export interface StoreProblem {
  readonly code: 'full' | 'lost' | 'newer' | 'not-ours';
  readonly detail: string;
}

/** What happened to one session, in order. */
export interface StoredJournal {
  readonly session: string;
  readonly events: readonly SessionEvent[];
}

/** Everything that is read when the app opens. */
export interface Stored {
  readonly programmes: readonly StoredProgramme[];
  readonly choices: Readonly<Record<string, string>>;
  readonly settings: Partial<Settings>;
  readonly log: readonly LogEntry[];
  readonly following: readonly Following[];
  readonly journals: readonly StoredJournal[];
}

/** Writes wait until `load` has ended. Success means that the transaction completed. */
export interface Store {
  load(): Promise<Result<Stored, StoreProblem>>;
  journals(): Promise<Result<readonly StoredJournal[], StoreProblem>>;
  putProgramme(programme: StoredProgramme): Promise<Result<void, StoreProblem>>;
  putChoice(programmeId: string, groupId: string): Promise<Result<void, StoreProblem>>;
  putSettings(settings: Settings): Promise<Result<void, StoreProblem>>;
  putEntry(entry: LogEntry): Promise<Result<void, StoreProblem>>;
  /** For good: only on the person's own word. */
  removeEntry(id: string): Promise<Result<void, StoreProblem>>;
  putFollowing(following: Following): Promise<Result<void, StoreProblem>>;
  /** Those that this version can read. */
  people(): Promise<Result<readonly Person[], StoreProblem>>;
  putPerson(person: Person): Promise<Result<void, StoreProblem>>;
  /** In order. Refused as `not-ours` when another tab has taken the session over. */
  append(
    session: string,
    tab: string,
    events: readonly SessionEvent[],
    strict: boolean,
  ): Promise<Result<void, StoreProblem>>;
  /** Entry in, journal out, lease free: one transaction. */
  closeSession(
    session: string,
    tab: string,
    entry: LogEntry | undefined,
  ): Promise<Result<void, StoreProblem>>;
  lease(): Promise<Result<Lease | undefined, StoreProblem>>;
  /** @returns false when another tab that lives has it */
  takeLease(lease: Lease, knownGone: boolean): Promise<Result<boolean, StoreProblem>>;
  /** @returns false when it is no longer this tab's */
  beat(lease: Lease): Promise<Result<boolean, StoreProblem>>;
  dropLease(tab: string): Promise<Result<void, StoreProblem>>;
}

/** Whether another tab runs a session, as far as the browser can tell. */
export interface Presence {
  hold(): void;
  release(): void;
  /** Nobody holds it: a young lease is a dead tab's. False where that cannot be known. */
  isFree(): Promise<boolean>;
}

/** This phone and this browser. */
export interface Device {
  readonly state: StoreApi<DeviceState>;
  readonly userAgent: string;
  stayAwake(on: boolean): void;
  /** Tells whether the screen is kept on. */
  onAwake(listener: (awake: boolean) => void): void;
  vibrate(change: Change): void;
  /** Asks the browser to keep what is stored. */
  persist(): Promise<void>;
}

/** Bytes that are here, of how many; a total of 0 is not known. */
export interface PackProgress {
  readonly loaded: number;
  readonly total: number;
}

/** Where the voice pack comes from. */
export interface PackSource {
  /** The whole pack, its hash compared and its frames checked. */
  load(progress: (at: PackProgress) => void): Promise<Result<VoicePack, 'missing' | 'damaged'>>;
}

/** Hands files out. */
export interface FileShare {
  /** Offers a file to other apps, or saves it where that is not possible. */
  give(name: string, type: string, content: Uint8Array<ArrayBuffer> | string): Promise<void>;
}

/** New versions of the app, and when none may be taken. */
export interface Updates {
  readonly store: StoreApi<UpdatesState>;
  /** A session is under way (or no longer). Safe to repeat. */
  setBusy(busy: boolean): void;
}

/** What is remembered of leading, where it survives the page. It may be lost: nothing rests on it. */
export interface LeadNote {
  /** As it lies there, whatever wrote it. */
  read(): unknown;
  write(note: LedBefore): void;
}

/** What a session is carried by and shown on outside the page. */
export interface PlayerPorts {
  readonly sound: Transport;
  readonly screen: Transport;
  readonly lockScreen: LockScreen;
  readonly leadNote: LeadNote;
}

/** Everything that the app needs of the world. */
export interface Ports {
  readonly clock: Clock;
  readonly store: Store;
  /** Fetched with the session's machinery: nobody's first screen plays anything. */
  readonly player: () => Promise<PlayerPorts>;
  readonly presence: Presence;
  readonly device: Device;
  readonly pack: PackSource;
  readonly share: FileShare;
  readonly updates: Updates;
  /** Fetched when something is first sent or received. */
  readonly exchange: () => Promise<ExchangePorts>;
  /** A random id, for a session or a tab. */
  readonly newId: () => string;
}
