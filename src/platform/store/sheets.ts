import type { SheetStore, StoredSheet } from '../../app/exchange-ports.ts';
import { type Connection, Refusal } from './connection.ts';

/** idb's types cannot follow a store's name through a list of names. */
interface Records {
  get(key: string): Promise<StoredSheet | undefined>;
  getAll(): Promise<StoredSheet[]>;
  put(sheet: StoredSheet): Promise<unknown>;
  delete(key: string): Promise<void>;
}
const records = (tx: { objectStore(name: 'sheets'): unknown }): Records =>
  tx.objectStore('sheets') as Records;

/** Programmes in writing. Success means that the transaction completed. */
export const createSheetStore = (connection: Connection): SheetStore => ({
  sheets: () =>
    connection.read(['sheets'], async (tx) =>
      (await records(tx).getAll()).filter(({ format }) => format === 'towpath-sheet/1'),
    ),
  putSheet: (sheet, read) =>
    connection.write(['sheets'], async (tx) => {
      const there = await records(tx).get(sheet.key);
      // A job may run twice: what this tab wrote itself is its own.
      const isOurs = there === undefined || there.tab === sheet.tab || there.mark === read;
      if (!isOurs) throw new Refusal({ code: 'not-ours', detail: `sheet ${sheet.key}` });
      await records(tx).put(sheet);
    }),
  removeSheet: (key) => connection.write(['sheets'], (tx) => records(tx).delete(key)),
});
