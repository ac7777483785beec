import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import type { StoredSheet } from '../../../src/app/exchange-ports.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import { type Connection, connect } from '../../../src/platform/store/connection.ts';
import { VERSION } from '../../../src/platform/store/migrations.ts';
import { createRecordsStore } from '../../../src/platform/store/records.ts';
import { createSheetStore } from '../../../src/platform/store/sheets.ts';
import { settle } from '../../drivers/clock.ts';
import { workshopOver } from '../../drivers/workshop/workshop.ts';

let names = 0;
const freshName = (): string => `sheets-${++names}`;

const sheet = (more: Partial<StoredSheet> = {}): StoredSheet => ({
  format: 'towpath-sheet/1',
  key: 'a',
  sheet: blankSheet('marsh-a', 'en'),
  changedAt: 5,
  tab: 'one',
  mark: 'first',
  ...more,
});
const done = { ok: true, value: undefined };
const notOurs = { ok: false, error: { code: 'not-ours' } };
const marks = async (connection: Connection): Promise<readonly string[]> => {
  const all = await createSheetStore(connection).sheets();
  return all.ok ? all.value.map(({ mark }) => mark) : [];
};

describe('sheets on the phone', () => {
  it('STORE-1 a sheet is given back as it was put, keys of other versions included', async () => {
    const name = freshName();
    const odd = JSON.parse('{ "__proto__": { "x": 1 }, "weather": [null, "é"] }');
    const put = sheet({ sheet: { ...blankSheet('marsh-a', 'en'), kept: odd } });
    expect(await createSheetStore(connect(name)).putSheet(put, undefined)).toEqual(done);
    const all = await createSheetStore(connect(name)).sheets();
    expect(all).toEqual({ ok: true, value: [put] });
    expect(all.ok && Object.keys(all.value[0]?.sheet.kept ?? {})).toEqual(['__proto__', 'weather']);
  });

  it('SHOP-20 a tab that has not read the last state of a sheet is refused', async () => {
    const connection = connect(freshName());
    const store = createSheetStore(connection);
    await store.putSheet(sheet(), undefined);
    const theirs = sheet({ tab: 'two', mark: 'theirs' });
    expect(await store.putSheet(theirs, undefined)).toMatchObject(notOurs);
    expect(await store.putSheet(theirs, 'older')).toMatchObject(notOurs);
    expect(await marks(connection)).toEqual(['first']);
    expect(await store.putSheet(theirs, 'first')).toEqual(done);
    expect(await store.putSheet(sheet({ mark: 'second' }), 'first')).toMatchObject(notOurs);
    expect(await marks(connection)).toEqual(['theirs']);
  });

  it('SHOP-20 of two tabs that write at the same moment one is refused', async () => {
    const name = freshName();
    await createSheetStore(connect(name)).putSheet(sheet(), undefined);
    const results = await Promise.all(
      ['two', 'three'].map((tab) =>
        createSheetStore(connect(name)).putSheet(sheet({ tab, mark: tab }), 'first'),
      ),
    );
    expect(results.map(({ ok }) => ok).sort()).toEqual([false, true]);
  });

  it('STORE-4 a write whose connection was lost is done once more, and is not in its own way', async () => {
    const name = freshName();
    const connection = connect(name);
    const store = createSheetStore(connection);
    await store.putSheet(sheet(), undefined);
    connection.close();
    expect(await store.putSheet(sheet({ mark: 'second' }), 'first')).toEqual(done);
    expect(await store.putSheet(sheet({ mark: 'third' }), 'first')).toEqual(done);
  });

  it('STORE-2 sheets of a later kind are exported, not shown and not written over', async () => {
    const name = freshName();
    const connection = connect(name);
    const store = createSheetStore(connection);
    await store.putSheet(sheet(), undefined);
    const db = await openDB(name, VERSION);
    const later = { format: 'towpath-sheet/2', key: 'z', strange: true };
    await db.put('sheets', later);
    db.close();
    expect(await marks(connection)).toEqual(['first']);
    const everything = await createRecordsStore(connection).everything();
    expect(everything.ok && everything.value.sheets).toEqual([
      ['a', sheet()],
      ['z', later],
    ]);
  });

  it('SHOP-22 a removed sheet is gone, and removing it again is nothing', async () => {
    const connection = connect(freshName());
    const store = createSheetStore(connection);
    await store.putSheet(sheet(), undefined);
    expect(await store.removeSheet('a')).toEqual(done);
    expect(await store.removeSheet('a')).toEqual(done);
    expect(await marks(connection)).toEqual([]);
  });

  it('SHOP-18 a workshop over it finds in a new tab what was written in another', async () => {
    const name = freshName();
    const one = workshopOver(createSheetStore(connect(name)));
    await one.getState().load();
    const key = await one.getState().create(blankSheet('marsh-a', 'en'));
    one.getState().edit({ kind: 'title', title: 'Marsh' });
    await expect.poll(() => one.getState().open?.saved).toBe(true);
    const two = workshopOver(createSheetStore(connect(name)));
    await two.getState().load();
    two.getState().openSheet(key);
    expect(two.getState().open?.sheet.title).toBe('Marsh');
    two.getState().edit({ kind: 'leader', leader: 'Imogen' });
    await expect.poll(() => two.getState().open?.saved).toBe(true);
    one.getState().edit({ kind: 'title', title: 'Marsh Mile' });
    await expect.poll(() => one.getState().open?.saved).toBe(true);
    await settle();
    expect(one.getState().open).toMatchObject({ wasKey: key, sheet: { leader: '' } });
    const all = await createSheetStore(connect(name)).sheets();
    expect(all.ok && all.value.map((each) => each.sheet.title).sort()).toEqual([
      'Marsh',
      'Marsh Mile (other window)',
    ]);
  });
});
