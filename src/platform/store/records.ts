import type { RecordsStore } from '../../app/records-contract.ts';
import { LEFT_OUT, type Row, type Stores } from '../../domain/exchange/backup.ts';
import { type Connection, Refusal } from './connection.ts';
import type { StoreName, Transaction } from './schema.ts';

/** What a restore reads and writes, in one transaction. */
const RESTORED: StoreName[] = [
  'programmes',
  'choices',
  'settings',
  'log',
  'following',
  'people',
  'sheets',
  'sent',
];

/** idb's types cannot follow a store's name through a list of names. */
interface Records {
  readonly keyPath: string | null;
  getAll(): Promise<unknown[]>;
  getAllKeys(): Promise<IDBValidKey[]>;
  put(value: unknown, key?: string): Promise<unknown>;
}
const storeOf = (tx: Transaction, name: string): Records =>
  tx.objectStore(name as StoreName) as unknown as Records;

async function rowsOf(tx: Transaction, names: readonly string[]): Promise<Stores> {
  const stores = await Promise.all(
    names.map(async (name) => {
      const store = storeOf(tx, name);
      const [keys, values] = await Promise.all([store.getAllKeys(), store.getAll()]);
      return [name, values.map((value, n): Row => [String(keys[n]), value])] as const;
    }),
  );
  return Object.fromEntries(stores);
}

/** Everything that can be kept elsewhere, whatever version wrote it; restored all or nothing. */
export const createRecordsStore = (connection: Connection): RecordsStore => ({
  everything: () =>
    connection.readWith((names) => names.filter((name) => !LEFT_OUT.has(name)), rowsOf),
  change: (job) =>
    connection.write(
      RESTORED,
      async (tx) => {
        const made = job(await rowsOf(tx, RESTORED));
        const strange = made.changes.find(({ store }) => !RESTORED.includes(store as StoreName));
        if (strange !== undefined)
          throw new Refusal({ code: 'not-ours', detail: `store ${strange.store}` });
        // Asked for all at once: waiting for each costs a way to the database and back.
        const puts = made.changes.map(({ store, key, value }) => {
          const place = storeOf(tx, store);
          const put = place.keyPath === null ? place.put(value, key) : place.put(value);
          // When another fails the transaction tells it; this one is then only aborted with it.
          put.catch(() => undefined);
          return put;
        });
        await Promise.all(puts);
        return made;
      },
      true,
    ),
});
