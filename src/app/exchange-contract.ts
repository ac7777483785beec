/**
 * What the screens may know and ask of sending and receiving programmes. Both stores are small;
 * codec, keys and codes are loaded when they are first needed.
 */
import type { Acceptance, Verdict } from '../domain/exchange/decide.ts';
import type { ExchangeProblem, KeyProblem } from '../domain/exchange/problem.ts';
import type { Programme } from '../domain/programme/programme.ts';
import type { Result } from '../domain/result.ts';
import type { StoreProblem } from './ports.ts';

// ---- receiving -----------------------------------------------------------------------------

/** What is shown before anything is stored. */
export interface Preview {
  readonly programme: Programme;
  /** `new`, `same`, `update`, `older`, `conflict`, `copy`, `rotated`, `retired`, `key-changed`. */
  readonly verdict: Verdict;
  /** Signed by the key that it names. Unsigned ones are kept as copies, without updates. */
  readonly signed: boolean;
  /** What is on this phone under the same name, where there is something. */
  readonly stored?: Came;
  /** The group that the person follows is no longer in it: ask for one again. */
  readonly groupGone?: string;
  /**
   * Six digits of the key that it is signed with, "402 917": the leader reads theirs out in
   * person. Present when `verdict.kind` is `key-changed`.
   */
  readonly digits?: string;
  /** What `accept` may be asked to do, the usual one first. Empty: there is nothing to keep. */
  readonly choices: readonly Acceptance[];
}

export type { Acceptance, Verdict };

/** "revision 2, from Imogen, received Mon 20:14" */
export interface Came {
  /** The id under which this phone keeps it: log, place and addresses in the app use this one. */
  readonly id: string;
  readonly revision: number;
  readonly leader: string;
  readonly title: string;
  /** UTC milliseconds. */
  readonly at: number;
  readonly signed: boolean;
  /** A second programme of the same name, kept apart from the first. */
  readonly apart: boolean;
}

/** What became of what was opened. */
export type Received =
  | { readonly name: 'nothing' }
  | { readonly name: 'reading' }
  /** Some of the parts of a code are there; the others may come in any order. */
  | { readonly name: 'parts'; readonly have: readonly number[]; readonly of: number }
  /** Nothing was stored. `src/copy/exchange.ts` has the sentence: `exchangeProblem(problem)`. */
  | { readonly name: 'refused'; readonly problem: ExchangeProblem }
  | { readonly name: 'preview'; readonly preview: Preview }
  | { readonly name: 'kept'; readonly id: string; readonly verdict: Verdict };

/** Receiving, as the screens see it. */
export interface ReceivedState {
  readonly received: Received;
  /** By the id under which the phone keeps it. What came with the app itself is not in it. */
  readonly came: Readonly<Record<string, Came>>;
  /**
   * A link, pasted text with anything around it, one part of several, or the text of a file.
   * A part joins those that are there already.
   */
  open(text: string): Promise<void>;
  /** A `.txt`, `.json` or picture file that the person chose. */
  openFile(file: Blob): Promise<void>;
  /** Looks for codes through the camera until stopped or a whole programme was seen. */
  scan(video: HTMLVideoElement): Promise<Result<() => void, ExchangeProblem>>;
  /** Only while a preview is shown, and only one of its `choices`. */
  accept(choice: Acceptance): Promise<Result<void, StoreProblem>>;
  /** Forgets what was opened, parts included. */
  dismiss(): void;
}

// ---- sending -------------------------------------------------------------------------------

/** The leader's keys on this phone. */
export type KeysView =
  | { readonly name: 'unknown' }
  | { readonly name: 'none' }
  | {
      readonly name: 'there';
      /** Six digits to read out when a participant is asked to compare them, "402 917". */
      readonly digits: (programmeId: string) => Promise<string>;
      /** UTC milliseconds. */
      readonly madeAt: number;
      /** When the backup file was last given out. Nothing: not yet, so publishing waits. */
      readonly savedAt?: number;
    };

export type { ExchangeProblem, KeyProblem };

/** One QR symbol, its quiet zone of four modules included. */
export interface Code {
  /** Modules along an edge: the `viewBox` is `0 0 size size`. */
  readonly size: number;
  /** SVG path data; every dark module is a unit square. */
  readonly path: string;
  /** ISO/IEC 18004 version, 1 to 25. */
  readonly version: number;
}

/** Everything that a programme can be sent as. */
export interface Sending {
  readonly programmeId: string;
  readonly title: string;
  readonly revision: number;
  readonly signed: boolean;
  readonly link: string;
  /** The app is served from a local address: its links work only there. */
  readonly linkIsLocal: boolean;
  /** First line in words, then the link: to be copied, or given out as a `.txt` file. */
  readonly text: string;
  readonly fileName: string;
  /** "Part 1 of 2" and so on when there are several. */
  readonly codes: readonly Code[];
  /** A message to send with it: title, revision, what changed, link. */
  readonly message: string;
}

/** The last revision of a programme that was sent from this phone, exactly as it went out. */
export interface Sent {
  readonly id: string;
  readonly revision: number;
  readonly text: string;
  /** base64url, 64 bytes; empty: sent unsigned. */
  readonly signature: string;
  readonly at: number;
}

/** Keys and sending, as the screens see them. */
export interface PublishingState {
  readonly keys: KeysView;
  /** By programme id. */
  readonly sent: Readonly<Record<string, Sent>>;
  /** Reads keys and what was sent; safe to call again. */
  load(): Promise<void>;
  /** Makes both key pairs and the backup, and gives the backup file out. */
  makeKeys(passphrase: string): Promise<Result<void, KeyProblem>>;
  /** Gives the backup file out again. It opens with the passphrase it was made with. */
  saveBackup(): Promise<Result<void, KeyProblem>>;
  /** Takes keys over from a backup file, on this phone or a new one. */
  restore(backup: string, passphrase: string): Promise<Result<void, KeyProblem>>;
  /** New keys, signed by the old ones: participants take them over with the next revision. */
  replaceKeys(passphrase: string): Promise<Result<void, KeyProblem>>;
  /**
   * Publishes a programme file's text: keys in, next revision if anything changed since it was
   * last sent, signed, and kept in `sent`. The same content again is the same revision again.
   */
  publish(text: string, change?: string): Promise<Result<Sending, KeyProblem | ExchangeProblem>>;
  /** What was sent last, to be shown again. */
  again(programmeId: string): Promise<Result<Sending, KeyProblem | ExchangeProblem>>;
  /** A copy without keys: anyone may change it, and updates are copies. Needs no keys. */
  unsigned(text: string): Promise<Result<Sending, ExchangeProblem>>;
  /** Through the share sheet, or saved: the `.txt` of a sending. */
  give(sending: Sending): Promise<void>;
}
