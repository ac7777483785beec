import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import type { StoredSheet } from '../../../src/app/exchange-ports.ts';
import { asAttendance, asHeard, asSetup } from '../../../src/domain/board/shapes.ts';
import { nobody } from '../../../src/domain/board/written.ts';
import { entryOf } from '../../../src/domain/log/entry-of.ts';
import type { Following } from '../../../src/domain/log/following.ts';
import type { Person } from '../../../src/domain/log/person.ts';
import { readEntry } from '../../../src/domain/log/read-entry.ts';
import { replay } from '../../../src/domain/session/journal.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import { createBoardStore } from '../../../src/platform/store/boards.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { MIGRATIONS } from '../../../src/platform/store/migrations.ts';
import { createSheetStore } from '../../../src/platform/store/sheets.ts';
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

const SHEET: StoredSheet = {
  format: 'towpath-sheet/1',
  key: 'sheet-a',
  sheet: blankSheet('marsh-a', 'en'),
  changedAt: 5,
  tab: 'one',
  mark: 'first',
};

const FOLLOWING: Following = {
  format: 'towpath-following/1',
  programmeId: 'marsh-mile',
  pauses: [],
  decisions: [],
};
const PERSON: Person = {
  format: 'towpath-person/1',
  programmeId: 'marsh-mile',
  secret: 's',
  told: [],
};

/** Who lies in the database of version 5. */
const ROSA = {
  format: 'towpath-heard/1',
  key: `heron-loop-spring ${'7f'.repeat(16)}`,
  programmeId: 'heron-loop-spring',
  person: '7f'.repeat(16),
  told: { at: 1_804_442_400_000, name: 'Rosa', group: 'wren', revision: 1, leftOut: 1 },
  known: { at: 1_804_442_500_000, name: 'Rosa B.' },
  entries: [
    {
      id: 'one',
      week: 1,
      session: 1,
      startedAt: 1_803_922_200_000,
      offsetMinutes: 0,
      zone: 'Europe/London',
      localDate: '2027-03-01',
      doneSeconds: 1860,
      activeSeconds: 1860,
      target: 50,
      effort: 5,
      niggle: { place: 'knee', side: 'left', severity: 1 },
      note: 'Wind on the sea wall',
      group: 'wren',
      toldAt: 1_804_442_400_000,
    },
  ],
};

describe('databases that earlier versions left', () => {
  for (let version = 1; version <= MIGRATIONS.length; version++) {
    it(`STORE-6 version ${version} opens with everything in it`, async () => {
      const name = `frozen-${version}`;
      await thaw(name, frozen(version));
      const connection = connect(name);
      const store = createStore(connection);
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
      const sheets = createSheetStore(connection);
      const kept = (frozen(version).stores.sheets?.records ?? []).map(([, value]) => value);
      expect(await sheets.sheets()).toEqual({ ok: true, value: kept });
      const next = { ...SHEET, key: 'sheet-b' };
      expect(await sheets.putSheet(next, undefined)).toMatchObject({ ok: true });
      expect(await sheets.sheets()).toMatchObject({ ok: true, value: [...kept, next] });
      const were = (name: string) =>
        (frozen(version).stores[name]?.records ?? []).map(([, value]) => value);
      expect(all.value.following).toEqual(were('following'));
      expect(await store.people()).toEqual({ ok: true, value: were('people') });
      expect(await store.putFollowing(FOLLOWING)).toMatchObject({ ok: true });
      expect(await store.putPerson(PERSON)).toMatchObject({ ok: true });
      const boards = createBoardStore(connection);
      const heard = were('heard').length === 0 ? [] : [ROSA];
      expect(await boards.boards()).toEqual({
        ok: true,
        value: { heard, days: were('days'), setups: were('boards') },
      });
      expect(heard.map(asHeard)).toEqual(heard);
      expect(were('days').map(asAttendance)).toEqual(were('days'));
      expect(were('boards').map(asSetup)).toEqual(were('boards'));
      const more = nobody('heron-loop-spring', 'hand.1');
      expect(await boards.change(() => ({ heard: [more] }))).toMatchObject({ ok: true });
      expect(await boards.boards()).toMatchObject({ ok: true, value: { heard: [...heard, more] } });
    });
  }
});
