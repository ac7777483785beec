import type { ExchangePorts } from '../app/exchange-ports.ts';
import { createCodes } from './codes/index.ts';
import { createExchangeStore, createKeys, createVerifier } from './keys/index.ts';
import type { Connection } from './store/connection.ts';

/** Keys, codes and what came and went, over the phone's database. */
export const createExchangePorts = (connection: Connection): ExchangePorts => ({
  verifier: createVerifier(),
  keys: createKeys(connection),
  codes: createCodes(),
  store: createExchangeStore(connection),
  address: () => globalThis.location?.href.replace(/#.*$/, '') ?? '',
});
