import type { ExchangePorts } from '../../../src/app/exchange-ports.ts';
import { fail } from '../../../src/domain/result.ts';

const none = async () => fail({ code: 'lost', detail: 'no store in this test' } as const);
const unsafe = async () => fail({ code: 'not-secure' } as const);

/** For tests in which nobody hears from anybody. */
export const NO_BOARDS: Pick<ExchangePorts, 'boards' | 'vault' | 'intake'> = {
  boards: { boards: none, change: none },
  vault: { lock: unsafe, open: unsafe, digest: async () => fail('not-secure') },
  intake: { open: async () => fail('no-keys') },
};
