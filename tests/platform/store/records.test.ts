import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { nobody } from '../../../src/domain/board/written.ts';
import { restore } from '../../../src/domain/exchange/restore.ts';
import { createBoardStore } from '../../../src/platform/store/boards.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { VERSION } from '../../../src/platform/store/migrations.ts';
import { createRecordsStore } from '../../../src/platform/store/records.ts';
import { createStore } from '../../../src/platform/store/store.ts';
import { entry } from '../../drivers/records/entries.ts';

let databases = 0;
const fresh = (): string => `records-${++databases}`;

describe('the stores that a backup is made of', () => {
  it('REC-7 every store is read with its keys, but the session under way, its lease, the keys and what others told', async () => {
    const name = fresh();
    const connection = connect(name);
    const store = createStore(connection);
    await store.putChoice('heron-loop-spring', 'wren');
    await store.putEntry(entry({ id: 'a' }));
    const boards = createBoardStore(connection);
    await boards.change(() => ({ heard: [nobody('heron-loop-spring', 'hand.1')] }));
    const read = await createRecordsStore(connection).everything();
    if (!read.ok) throw new Error(read.error.detail);
    expect(read.value.choices).toEqual([['heron-loop-spring', 'wren']]);
    expect(read.value.log).toEqual([['a', entry({ id: 'a' })]]);
    const db = await openDB(name);
    const all = [...db.objectStoreNames].filter(
      (each) => !['journal', 'meta', 'keys', 'heard', 'days', 'boards'].includes(each),
    );
    db.close();
    expect(Object.keys(read.value).sort()).toEqual(all.sort());
  });

  it('REC-7, STORE-2 what a later version keeps is read whole, and nothing is restored into it', async () => {
    const name = fresh();
    const later = await openDB(name, VERSION + 1, {
      upgrade(db) {
        db.createObjectStore('log', { keyPath: 'id' });
        db.createObjectStore('tides');
        db.createObjectStore('keys');
      },
    });
    await later.put('tides', { high: 5 }, 'today');
    await later.put('keys', { secret: true }, 'leader');
    later.close();
    const records = createRecordsStore(connect(name));
    expect(await records.everything()).toEqual({
      ok: true,
      value: { log: [], tides: [['today', { high: 5 }]] },
    });
    const taken = await records.change((here) =>
      restore(here, { log: [['a', entry({ id: 'a' })]] }),
    );
    expect(taken.ok ? '' : taken.error.code).toBe('newer');
    expect(await records.everything()).toMatchObject({ value: { log: [] } });
  });

  it('REC-20 what is written meanwhile is read by the restore and kept', async () => {
    const connection = connect(fresh());
    const store = createStore(connection);
    const records = createRecordsStore(connection);
    await store.load();
    const since = entry({ id: 'a', feeling: { effort: 9 }, feltAt: 9e12 });
    // Asked for in the same breath: the entry’s transaction is first.
    const [, taken] = await Promise.all([
      store.putEntry(since),
      records.change((here) =>
        restore(here, { log: [['a', entry({ id: 'a', feeling: { effort: 1 } })]] }),
      ),
    ]);
    expect(taken.ok).toBe(true);
    const after = await records.everything();
    expect(after.ok && after.value.log?.[0]?.[1]).toMatchObject({ feeling: { effort: 9 } });
  });
});
