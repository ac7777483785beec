import type { ProgrammeProblem } from '../programme/problem.ts';

/** Why something from outside was not taken. `src/copy/exchange.ts` has a sentence for each. */
export const EXCHANGE_CODES = [
  'answer',
  'camera-none',
  'camera-refused',
  'code-none',
  'cut-short',
  'damaged',
  'empty',
  'file-kind',
  'newer',
  'not-loaded',
  'not-secure',
  'nothing-found',
  'picture',
  'programme',
  'signature',
  'store',
  'too-large',
] as const;
/** One of these codes. */
export type ExchangeCode = (typeof EXCHANGE_CODES)[number];

/** Why something was not taken from outside. */
export interface ExchangeProblem {
  readonly code: ExchangeCode;
  /** For `programme`: what is wrong with the file inside, first things first. */
  readonly problems?: readonly ProgrammeProblem[];
}

/** Why a leader's keys could not be made, read or used. */
export const KEY_CODES = [
  'backup-damaged',
  'backup-newer',
  'not-secure',
  'no-keys',
  'not-backed-up',
  'not-kept',
  'not-loaded',
  'passphrase-short',
  'passphrase-wrong',
] as const;
/** One of these codes. */
export type KeyCode = (typeof KEY_CODES)[number];

/** Why something with keys was not done. */
export interface KeyProblem {
  readonly code: KeyCode;
}

/** Why an answer could not be made or opened. `src/copy/tell.ts` has a sentence for each. */
export const ANSWER_CODES = [
  'content',
  'cut-short',
  'damaged',
  'empty',
  'newer',
  'no-keys',
  'not-an-answer',
  'not-for-this-key',
  'not-kept',
  'not-loaded',
  'not-secure',
  'other-programme',
  'seal',
  'too-large',
] as const;
/** One of these codes. */
export type AnswerCode = (typeof ANSWER_CODES)[number];

/** Why something with an answer was not done. */
export interface AnswerProblem {
  readonly code: AnswerCode;
}
