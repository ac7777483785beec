import type { ProgrammeProblem } from '../programme/problem.ts';

/** Why something from outside was not taken. `src/copy/exchange.ts` has a sentence for each. */
export const EXCHANGE_CODES = [
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
export type ExchangeCode = (typeof EXCHANGE_CODES)[number];

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
export type KeyCode = (typeof KEY_CODES)[number];

export interface KeyProblem {
  readonly code: KeyCode;
}
