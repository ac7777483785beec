import { openDB } from 'idb';

/** Every record of every store of a database as it lies there, past all of the app's own code. */
export async function everythingIn(
  name = 'towpath',
): Promise<Readonly<Record<string, readonly unknown[]>>> {
  const db = await openDB(name);
  const names = [...db.objectStoreNames];
  const stores = await Promise.all(names.map((each) => db.getAll(each)));
  db.close();
  return Object.fromEntries(names.map((each, n) => [each, stores[n] ?? []]));
}
