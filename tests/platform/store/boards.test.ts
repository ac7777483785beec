import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import type { BoardChange, Boards } from '../../../src/app/board-contract.ts';
import { marked, nobody, unsaid, withKeep } from '../../../src/domain/board/written.ts';
import { createBoardStore } from '../../../src/platform/store/boards.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { fromRow, toRow } from '../../../src/platform/store/heard-row.ts';
import { heards, told } from '../../domain/board/records.ts';

const ID = 'heron-loop-spring';
const ROSA = nobody(ID, '7f'.repeat(16));
const TAMSIN = nobody(ID, '3c'.repeat(16));
const SATURDAY = { date: '2027-03-06', week: 1, session: 1 };
const DAY = marked(undefined, ID, SATURDAY, { person: ROSA.person, present: true, now: 5 });
const SETUP = withKeep(unsaid(ID), true, 5);
const ALL: Boards = { heard: [TAMSIN, ROSA], days: [DAY], setups: [SETUP] };

let databases = 0;
const fresh = () => {
  const name = `boards-${++databases}`;
  return { name, store: createBoardStore(connect(name)) };
};

async function filled() {
  const made = fresh();
  await made.store.change(() => ALL);
  return made;
}

/** Writes a record past the app, as another version of it would. */
async function plant(name: string, store: string, value: unknown): Promise<void> {
  const db = await openDB(name);
  await db.put(store, value);
  db.close();
}

describe('the store of what others told', () => {
  it('KEEP-1 gives back what was put, in a row of its own version for each person', async () => {
    const { name, store } = await filled();
    expect(await store.boards()).toEqual({ ok: true, value: ALL });
    const again = createBoardStore(connect(name));
    expect(await again.boards()).toEqual({ ok: true, value: ALL });
    const db = await openDB(name);
    const rows = await db.getAll('heard');
    db.close();
    expect(rows.map(({ format, key }) => [format, key])).toEqual(
      ALL.heard.map(({ key }) => ['towpath-heard-row/1', key]),
    );
  });

  it('KEEP-1 a person is read from their row as they were, whatever they told', () => {
    const whole = { ...told('w', 1), group: 'wren', toldAt: 5, effort: 0, effortLater: 9 };
    const more = { niggle: { place: 'knee' as const }, warningSign: true as const, note: 'Wind' };
    const bare = { ...told('b', 2), group: 'dunlin', toldAt: 6 };
    const all = {
      ...ROSA,
      entries: [{ ...whole, ...more }, bare, { ...bare, id: 'c', note: 'x' }],
    };
    expect(fromRow(toRow(all))).toEqual(all);
    fc.assert(
      fc.property(heards, (heard) => {
        expect(fromRow(toRow(heard))).toEqual(heard);
      }),
    );
  });

  it('KEEP-1 whoever did not change stays the same object from one reading to the next', async () => {
    const { store } = await filled();
    const first = await store.boards();
    const named = { ...ROSA, known: { at: 9, name: 'Rosa' } };
    await store.change(() => ({ heard: [named] }));
    const second = await store.boards();
    if (!first.ok || !second.ok) throw new Error('not read');
    expect(second.value.heard[0]).toBe(first.value.heard[0]);
    expect(second.value.heard[1]).toBe(named);
  });

  it('KEEP-2 a change sees what it asked for, and is written wholly or not at all', async () => {
    const { store } = await filled();
    let seen: Boards | undefined;
    const job = (here: Boards): BoardChange => {
      seen = here;
      return { gone: { heard: [ROSA.key] } };
    };
    await store.change(job, { heard: [ROSA.key, 'nobody'], days: [] });
    expect(seen).toEqual({ heard: [ROSA], days: [], setups: [SETUP] });
    expect(await store.boards()).toEqual({ ok: true, value: { ...ALL, heard: [TAMSIN] } });
    const throws = await store.change(() => {
      throw new Error('a fault in the job');
    });
    expect(throws).toMatchObject({ ok: false });
    // A value that no database can copy: the person before it in the change is not written either.
    const bad = { ...DAY, marks: (() => {}) as never };
    expect(await store.change(() => ({ heard: [ROSA], days: [bad] }))).toMatchObject({ ok: false });
    expect(await store.boards()).toEqual({ ok: true, value: { ...ALL, heard: [TAMSIN] } });
  });

  it('KEEP-2 what a newer version wrote is neither shown nor touched, by no change', async () => {
    const { name, store } = await filled();
    const rows = [
      ['heard', { format: 'towpath-heard-row/2', key: ROSA.key, packed: [1] }],
      ['days', { format: 'towpath-attendance/2', key: DAY.key }],
      ['boards', { format: 'towpath-board/2', programmeId: ID }],
    ] as const;
    for (const [place, value] of rows) await plant(name, place, value);
    expect(await store.boards()).toEqual({
      ok: true,
      value: { heard: [TAMSIN], days: [], setups: [] },
    });
    const changes: readonly BoardChange[] = [
      { heard: [TAMSIN, ROSA] },
      { days: [DAY] },
      { setups: [SETUP] },
      { gone: { heard: [ROSA.key] } },
      { gone: { days: [DAY.key] } },
      { gone: { setups: [ID] } },
    ];
    for (const change of changes)
      expect(await store.change(() => change)).toMatchObject({ error: { code: 'newer' } });
    const db = await openDB(name);
    for (const [place, value] of rows) expect(await db.getAll(place)).toContainEqual(value);
    db.close();
  });

  it('KEEP-2 a record that cannot be read hides nobody else', async () => {
    const { name, store } = await filled();
    await plant(name, 'heard', { format: 'towpath-heard-row/1', key: ROSA.key, json: '{"cut' });
    expect(await store.boards()).toMatchObject({ ok: true, value: { heard: [TAMSIN] } });
  });
});
