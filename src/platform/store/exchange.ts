import type { ExchangeStore } from '../../app/exchange-ports.ts';
import type { Connection } from './connection.ts';
import { storeOf } from './store.ts';

/** Programmes that came and programmes that went. Success means that the transaction completed. */
export const createExchangeStore = (connection: Connection): ExchangeStore => {
  const put = (name: 'programmes' | 'sent', value: unknown) =>
    connection.write([name], async (tx) => void (await storeOf(tx, name).put(value)), true);
  return {
    programmes: () => connection.read(['programmes'], (tx) => storeOf(tx, 'programmes').getAll()),
    putProgramme: (programme) => put('programmes', programme),
    sent: () => connection.read(['sent'], (tx) => storeOf(tx, 'sent').getAll()),
    putSent: (sent) => put('sent', sent),
  };
};
