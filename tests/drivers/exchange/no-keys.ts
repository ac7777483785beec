import type { LeaderKeysPort } from '../../../src/app/exchange-ports.ts';
import { fail, ok } from '../../../src/domain/result.ts';

const none = async () => fail({ code: 'no-keys' } as const);

/** A phone of someone who only takes part. */
export const NO_KEYS: LeaderKeysPort = {
  read: async () => ok(undefined),
  make: none,
  restore: none,
  replace: none,
  saved: none,
  sign: none,
  open: none,
};
