/** What sending and receiving need of the world. */
import type { Claim } from '../domain/exchange/incoming.ts';
import type { AnswerProblem, ExchangeCode, KeyProblem } from '../domain/exchange/problem.ts';
import type { Succession } from '../domain/exchange/succession.ts';
import type { Result } from '../domain/result.ts';
import type { Sheet } from '../domain/workshop/sheet.ts';
import type { BoardStore, Intake, Vault } from './board-contract.ts';
import type { Code, Sent } from './exchange-contract.ts';
import type { StoredProgramme, StoreProblem } from './ports.ts';
import type { RecordsStore } from './records-contract.ts';

/** Checks what was signed. */
export interface Verifier {
  /** Whether a signature is right. `not-secure`: this page may not ask, so nobody can tell. */
  verify(claim: Claim): Promise<Result<boolean, 'not-secure'>>;
  /** Six digits of a key in a programme, to be compared in person. Slow on purpose. */
  digits(key: string, programmeId: string): Promise<Result<string, 'not-secure'>>;
}

/** What is known of the leader's own keys. The private halves never leave the platform. */
export interface OwnKeys {
  readonly sign: string;
  readonly seal: string;
  /** Keys that these came after, oldest first. */
  readonly was: readonly Succession[];
  readonly madeAt: number;
  /** When the backup file was last given out. */
  readonly savedAt?: number;
  /** The backup file, locked with the passphrase that it was made with. */
  readonly backup: string;
}

/** What new keys are made with. */
export interface NewKeys {
  readonly passphrase: string;
  /** What the backup file says of itself to whoever opens it. */
  readonly words: string;
  /** UTC milliseconds. */
  readonly at: number;
}

/** The leader's own keys on this phone. */
export interface LeaderKeysPort {
  read(): Promise<Result<OwnKeys | undefined, KeyProblem>>;
  /** Makes both pairs and their backup, and keeps them. Keys that are there stay. */
  make(wish: NewKeys): Promise<Result<OwnKeys, KeyProblem>>;
  /** Takes keys over from a backup file. Keys that are there are replaced. */
  restore(backup: string, passphrase: string, at: number): Promise<Result<OwnKeys, KeyProblem>>;
  /** New pairs; the old signing key signs the new one and is then forgotten. */
  replace(wish: NewKeys): Promise<Result<OwnKeys, KeyProblem>>;
  /** The backup file was given out. */
  saved(at: number): Promise<Result<OwnKeys, KeyProblem>>;
  /** ECDSA with P-256 and SHA-256, base64url. */
  sign(bytes: Uint8Array<ArrayBuffer>): Promise<Result<string, KeyProblem>>;
  /** Opens what was sealed for the leader (HPKE, RFC 9180). The private half stays where it is. */
  open(sealed: Uint8Array): Promise<Result<Uint8Array<ArrayBuffer>, AnswerProblem>>;
}

/** QR symbols, drawn and read. */
export interface Codes {
  /** A QR symbol with error correction M; nothing when version 25 does not hold it. */
  draw(text: string): Promise<Code | undefined>;
  /** Texts of all symbols that can be read in a picture. */
  inPicture(picture: Blob): Promise<Result<readonly string[], ExchangeCode>>;
  /** Looks through the camera and tells every text it sees, again and again, until stopped. */
  watch(
    video: HTMLVideoElement,
    saw: (text: string) => void,
  ): Promise<Result<() => void, ExchangeCode>>;
}

/** Programmes that came and programmes that went. */
export interface ExchangeStore {
  programmes(): Promise<Result<readonly StoredProgramme[], StoreProblem>>;
  putProgramme(programme: StoredProgramme): Promise<Result<void, StoreProblem>>;
  sent(): Promise<Result<readonly Sent[], StoreProblem>>;
  putSent(sent: Sent): Promise<Result<void, StoreProblem>>;
}

/** A programme in writing, as it lies on this phone. */
export interface StoredSheet {
  readonly format: 'towpath-sheet/1';
  readonly key: string;
  readonly sheet: Sheet;
  /** UTC milliseconds. */
  readonly changedAt: number;
  /** Which tab wrote it last. */
  readonly tab: string;
  /** A new one each time it is written. */
  readonly mark: string;
}

/** Programmes in writing, in the phone's database. */
export interface SheetStore {
  /** Those that this version can read. */
  sheets(): Promise<Result<readonly StoredSheet[], StoreProblem>>;
  /**
   * Refused as `not-ours` when another tab has written the sheet since.
   *
   * @param read the mark that this tab read or wrote last; nothing: the sheet is new
   */
  putSheet(sheet: StoredSheet, read: string | undefined): Promise<Result<void, StoreProblem>>;
  removeSheet(key: string): Promise<Result<void, StoreProblem>>;
}

/** Words through the share sheet. */
export interface Words {
  canShare(): boolean;
  /** Through the share sheet, inside a tap. @returns whether it was handed on */
  share(text: string): Promise<boolean>;
}

/** Everything that sending, receiving, writing and boards need of the world. */
export interface ExchangePorts {
  readonly verifier: Verifier;
  readonly keys: LeaderKeysPort;
  readonly codes: Codes;
  readonly store: ExchangeStore;
  readonly sheets: SheetStore;
  /** Seals bytes for a key as it stands in a programme (HPKE, RFC 9180). `seal`: it is no key. */
  readonly seal: (
    key: string,
    bytes: Uint8Array<ArrayBuffer>,
  ) => Promise<Result<Uint8Array<ArrayBuffer>, 'seal' | 'not-secure'>>;
  readonly words: Words;
  readonly records: RecordsStore;
  /** What others told this device's leader. */
  readonly boards: BoardStore;
  readonly vault: Vault;
  readonly intake: Intake;
  /** The address of the app, without its fragment. */
  readonly address: () => string;
}
