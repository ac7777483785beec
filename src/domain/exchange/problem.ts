import type { ProgrammeProblem } from '../programme/problem.ts';

/** Why something from outside was not taken. `src/copy/exchange.ts` has a sentence for each. */
export const EXCHANGE_CODES = [
  'camera-none',
  'camera-refused',
  'code-none',
  'code-too-large',
  'cut-short',
  'damaged',
  'empty',
  'file-kind',
  'newer',
  'nothing-found',
  'part-damaged',
  'part-other',
  'picture',
  'programme',
  'retired-key',
  'signature',
  'too-large',
] as const;
export type ExchangeCode = (typeof EXCHANGE_CODES)[number];

export interface ExchangeProblem {
  readonly code: ExchangeCode;
  /** For `programme`: what is wrong with the file inside, first things first. */
  readonly problems?: readonly ProgrammeProblem[];
}
