import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { entryOf } from '../../../src/domain/log/entry-of.ts';
import { readEntry } from '../../../src/domain/log/read-entry.ts';
import { replay } from '../../../src/domain/session/journal.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { MIGRATIONS } from '../../../src/platform/store/migrations.ts';
import { createStore } from '../../../src/platform/store/store.ts';

/** A database as some version left it: frozen, never written anew. */
interface Frozen {
  readonly version: number;
  readonly stores: Readonly<
    Record<
      string,
      {
        readonly keyPath: string | null;
        readonly autoIncrement: boolean;
        readonly indexes: Readonly<Record<string, string>>;
        readonly records: readonly (readonly [key: string | number, value: unknown])[];
      }
    >
  >;
}

const frozen = (version: number): Frozen =>
  JSON.parse(
    readFileSync(new URL(`../../fixtures/store/v${version}.json`, import.meta.url), 'utf8'),
  ) as Frozen;

/** Makes the database without any of the app's code. */
async function thaw(name: string, { version, stores }: Frozen): Promise<void> {
  const db = await openDB(name, version, {
    upgrade(fresh) {
      for (const [store, { keyPath, autoIncrement, indexes }] of Object.entries(stores)) {
        const made = fresh.createObjectStore(store, { keyPath, autoIncrement });
        for (const [index, path] of Object.entries(indexes)) made.createIndex(index, path);
      }
    },
  });
  for (const [store, { keyPath, records }] of Object.entries(stores)) {
    for (const [key, value] of records)
      await db.put(store, value, keyPath === null ? key : undefined);
  }
  db.close();
}

describe('databases that earlier versions left', () => {
  for (let version = 1; version <= MIGRATIONS.length; version++) {
    it(`STORE-6 version ${version} opens with everything in it`, async () => {
      const name = `frozen-${version}`;
      await thaw(name, frozen(version));
      const store = createStore(connect(name));
      const all = await store.load();
      if (!all.ok) throw new Error(all.error.detail);
      const { programmes, choices, settings, log, journals } = all.value;
      expect(programmes.map(({ id }) => id)).toEqual(['heron-loop-spring']);
      expect(choices).toEqual({ 'heron-loop-spring': 'wren' });
      expect(settings).toMatchObject({ talk: 'many', cautionsReadOn: '2027-03-01' });
      expect(log.map((entry) => readEntry(entry)?.id)).toEqual(['a-done', 'b-early']);
      const session = replay(journals[0]?.events ?? []);
      expect(session).toMatchObject({ name: 'holding', lane: 'session', place: 40_000 });
      expect(session && entryOf(session)).toMatchObject({ doneSeconds: 40, activeSeconds: 40 });
      expect(await store.putChoice('heron-loop-spring', 'curlew')).toMatchObject({ ok: true });
    });
  }
});
