import type { RecordsStore } from '../../../src/app/records-contract.ts';
import { fail } from '../../../src/domain/result.ts';

const none = async () => fail({ code: 'lost', detail: 'no store in this test' } as const);

/** For tests that neither save nor restore. */
export const NO_RECORDS: RecordsStore = { everything: none, change: none };
