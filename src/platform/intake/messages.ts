import type { IntakeBatch, IntakeSource } from '../../app/intake-contract.ts';
import type { SealPair } from '../keys/seal.ts';

/** To the worker: what to open, once, and then that a batch was taken. */
export type ToWorker =
  | { readonly kind: 'open'; readonly sources: readonly IntakeSource[]; readonly pair: SealPair }
  | { readonly kind: 'next' };

/** From the worker: it runs; a batch, after which it waits; and that all is done. */
export type FromWorker =
  | { readonly kind: 'ready' }
  | { readonly kind: 'batch'; readonly batch: IntakeBatch }
  | { readonly kind: 'done' }
  | { readonly kind: 'failed' };
