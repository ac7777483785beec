/**
 * What bringing answers in needs of the world, and what it gives. Apart from the board's contract
 * because a worker without a page reads it too.
 */
import type { AnswerCode } from '../domain/exchange/problem.ts';
import type { Response } from '../domain/exchange/response.ts';
import type { Result } from '../domain/result.ts';

/** Something that may hold answers: a pasted text, a link, a scanned code, a file, a whole export. */
export interface IntakeSource {
  /** What the leader knows it by: a file's name, or empty. */
  readonly name: string;
  readonly content: string | Blob;
}

/** Why an answer was found and not taken. `again`: all of it was known. */
export type LeftWhy =
  | Exclude<AnswerCode, 'empty' | 'seal' | 'not-kept' | 'not-loaded' | 'not-an-answer'>
  | 'again'
  | 'forgotten'
  /** Its time lies more than a day ahead of this device's clock. */
  | 'ahead'
  /** The programme has as many people, or the person as many sessions, as a board holds. */
  | 'full'
  /** Parts of a code of several, and not all of them. */
  | 'part'
  /** A file that could not be read, or is none that may hold answers. */
  | 'file';

/** What was found and not taken, for one reason. */
export interface Left {
  readonly why: LeftWhy;
  readonly count: number;
  /** Names of the first few sources that they were in. */
  readonly from: readonly string[];
}

/** What the worker finds, some at a time. */
export interface IntakeBatch {
  readonly share: number;
  /** Opened, bounded and checked; at most 100. */
  readonly responses: readonly Response[];
  /** For each of them the name of the source that it was in. */
  readonly from: readonly string[];
  readonly left: readonly Left[];
  /** Sealed answers that were seen in this batch, those that were left included. */
  readonly found: number;
}

/** Opens sealed answers beside the page, so that the page goes on. */
export interface Intake {
  /**
   * Batches come one at a time: the next waits until `take` has settled, which bounds memory.
   *
   * @param signal aborts after the batch that is under way
   */
  open(
    sources: readonly IntakeSource[],
    take: (batch: IntakeBatch) => Promise<void>,
    signal: AbortSignal,
  ): Promise<Result<void, 'no-keys' | 'not-secure' | 'not-loaded'>>;
}
