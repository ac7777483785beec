/**
 * What the screens may know and ask of what comes back to a leader, and what that needs of the
 * world. Fetched when a leader first looks; nobody who only takes part needs it.
 */
import type { Attendance } from '../domain/board/attendance.ts';
import type { Heard } from '../domain/board/heard.ts';
import type { BoardSetup } from '../domain/board/setup.ts';
import type { KeyProblem } from '../domain/exchange/problem.ts';
import type { Programme } from '../domain/programme/programme.ts';
import type { Result } from '../domain/result.ts';
import type { IntakeSource, Left } from './intake-contract.ts';
import type { StoreProblem } from './ports.ts';

export type { Intake, IntakeBatch, IntakeSource, Left, LeftWhy } from './intake-contract.ts';

// ---- bringing in -----------------------------------------------------------------------------

/** What bringing in has come to, so far or in all. */
export interface IntakeReport {
  /** Sealed answers that were seen: each was taken or left. Files that were left are not counted. */
  readonly found: number;
  /** By programme id. `people`: each once; `sessions`: those that nobody had told of before. */
  readonly taken: Readonly<
    Record<string, { readonly answers: number; readonly people: number; readonly sessions: number }>
  >;
  readonly left: readonly Left[];
}

/** How far bringing in is. */
export type IntakeView =
  | { readonly name: 'nothing' }
  | {
      readonly name: 'reading';
      /** 0 to 1. */
      readonly share: number;
      readonly report: IntakeReport;
    }
  /** `cancelled`: what had been taken by then stays. */
  | { readonly name: 'done'; readonly cancelled: boolean; readonly report: IntakeReport }
  /** Nothing could be done at all, or what was taken could not be kept. */
  | { readonly name: 'refused'; readonly why: 'no-keys' | 'not-secure' | 'not-loaded' | 'store' };

// ---- what is kept ----------------------------------------------------------------------------

/** Everything that is kept of people who told, by programme. */
export interface Boards {
  readonly heard: readonly Heard[];
  readonly days: readonly Attendance[];
  readonly setups: readonly BoardSetup[];
}

/** What changes in one go: put, by key, or taken out. */
export interface BoardChange {
  readonly heard?: readonly Heard[];
  readonly days?: readonly Attendance[];
  readonly setups?: readonly BoardSetup[];
  readonly gone?: {
    /** Keys. */
    readonly heard?: readonly string[];
    readonly days?: readonly string[];
    /** Programme ids. */
    readonly setups?: readonly string[];
  };
}

/** What others told, in the phone's database. */
export interface BoardStore {
  /** Those that this version can read. */
  boards(): Promise<Result<Boards, StoreProblem>>;
  /**
   * Reads what is there and writes what the job says, in one transaction: all of it or nothing.
   * The job may run twice, and does nothing but say.
   *
   * @param of the keys of people and of days that the job looks at; left out: all of them. What
   * was said of whole programmes is always there
   */
  change(
    job: (here: Boards) => BoardChange,
    of?: { readonly heard?: readonly string[]; readonly days?: readonly string[] },
  ): Promise<Result<BoardChange, StoreProblem>>;
}

/** Locks and opens what only somebody with a passphrase may read. */
export interface Vault {
  lock(text: string, passphrase: string, words: string): Promise<Result<string, KeyProblem>>;
  open(file: string, passphrase: string): Promise<Result<string, KeyProblem>>;
  /** SHA-256, base64url. */
  digest(text: string): Promise<Result<string, 'not-secure'>>;
}

// ---- the board -------------------------------------------------------------------------------

/** What a file of boards would bring. Nothing is kept before `takeIn`. */
export interface BoardFilePreview {
  /** Programme ids with their titles where this device has them. */
  readonly programmes: readonly { readonly id: string; readonly title?: string }[];
  readonly people: number;
  readonly newPeople: number;
  readonly sessions: number;
  readonly newSessions: number;
  /** People who were forgotten here, and stay so. */
  readonly forgotten: number;
}

/** Why something of a board was not done. */
export type BoardProblem = StoreProblem | KeyProblem;

/** What the screens see of what came back, and what they may ask. */
export interface BoardState {
  readonly ready: boolean;
  /** What is kept could not be read; it is tried again. */
  readonly problem?: StoreProblem;
  /** Programmes that were sent from this device, the latest first. */
  readonly programmes: readonly Programme[];
  /** By programme id. */
  readonly heard: Readonly<Record<string, readonly Heard[]>>;
  readonly days: Readonly<Record<string, readonly Attendance[]>>;
  readonly setups: Readonly<Record<string, BoardSetup>>;
  /** Local date from which a programme's people go, by programme id; none: they are kept. */
  readonly goesOn: Readonly<Record<string, string>>;
  /** Programmes whose people went just now because their time was over. */
  readonly went: readonly string[];
  readonly intake: IntakeView;

  /** Reads what is kept, and lets go of what is due; safe to call again. */
  load(): Promise<void>;

  bringIn(sources: readonly IntakeSource[]): Promise<void>;
  /** What was taken so far stays. */
  cancelIntake(): void;
  dismissIntake(): void;
  /** Looks for codes through the camera; every answer seen is taken in, until stopped. */
  scan(
    video: HTMLVideoElement,
  ): Promise<Result<() => void, 'camera-none' | 'camera-refused' | 'not-loaded'>>;

  /** Somebody who has not told yet. @returns their id */
  addPerson(
    programmeId: string,
    person: { readonly name: string; readonly group: string },
  ): Promise<Result<string, BoardProblem>>;
  /** The leader's own words for a person; an empty name takes them back. */
  describe(
    programmeId: string,
    person: string,
    words: { readonly name?: string; readonly group?: string },
  ): Promise<Result<void, BoardProblem>>;
  /** Two are one: somebody written in by hand, and one who told. `undefined` takes it back. */
  isSame(
    programmeId: string,
    byHand: string,
    person: string | undefined,
  ): Promise<Result<void, BoardProblem>>;
  /** Wholly and for good: nothing of them is left, and nothing that they sent before comes back. */
  forget(programmeId: string, person: string): Promise<Result<void, BoardProblem>>;
  mark(
    programmeId: string,
    day: { readonly date: string; readonly week: number; readonly session: number },
    person: string,
    present: boolean,
  ): Promise<Result<void, BoardProblem>>;
  /** How many are in a group; 0: it is not known. */
  expect(programmeId: string, group: string, count: number): Promise<Result<void, BoardProblem>>;
  /** Past 90 days after the event. */
  keep(programmeId: string, on: boolean): Promise<Result<void, BoardProblem>>;

  /** One programme's people as a table or as they are kept. They hold other people's data. */
  save(programmeId: string, what: 'csv' | 'json'): Promise<Result<void, BoardProblem>>;
  /** All boards under a passphrase: a backup, or for somebody who leads too. */
  saveLocked(passphrase: string): Promise<Result<void, BoardProblem>>;
  /** What is in such a file. Shown before anything is kept. */
  openLocked(file: Blob, passphrase: string): Promise<Result<BoardFilePreview, BoardProblem>>;
  /** Merges what was opened last into what is here. */
  takeIn(): Promise<Result<void, BoardProblem>>;
}
