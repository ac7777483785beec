import type { ExchangePorts } from '../app/exchange-ports.ts';
import { createCodes } from './codes/index.ts';
import { createIntake } from './intake/index.ts';
import { createKeys, createVault, createVerifier } from './keys/index.ts';
import { createWords } from './share/words.ts';
import { createBoardStore } from './store/boards.ts';
import type { Connection } from './store/connection.ts';
import { createExchangeStore } from './store/exchange.ts';
import { createRecordsStore } from './store/records.ts';
import { createSheetStore } from './store/sheets.ts';

/** Keys, codes, what came and went and what is being written, over the phone's database. */
export const createExchangePorts = (connection: Connection): ExchangePorts => ({
  verifier: createVerifier(),
  keys: createKeys(connection),
  codes: createCodes(),
  store: createExchangeStore(connection),
  sheets: createSheetStore(connection),
  seal: async (key, bytes) => (await import('./keys/seal.ts')).sealFor(key, bytes),
  words: createWords(),
  records: createRecordsStore(connection),
  boards: createBoardStore(connection),
  vault: createVault(),
  intake: createIntake(connection, createCodes()),
  address: () => globalThis.location?.href.replace(/#.*$/, '') ?? '',
});
