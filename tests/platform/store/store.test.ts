import 'fake-indexeddb/auto';
import { deleteDB, openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import type { Store } from '../../../src/app/ports.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import { ms } from '../../../src/domain/units.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { MIGRATIONS, VERSION } from '../../../src/platform/store/migrations.ts';
import { createRecordsStore } from '../../../src/platform/store/records.ts';
import { createStore } from '../../../src/platform/store/store.ts';
import { ABOUT, EASY_DAY, NINE_O_CLOCK, scoreOf } from '../../drivers/sessions.ts';

let names = 0;
const freshName = (): string => `store-${++names}`;

async function opened(name = freshName()): Promise<Store> {
  const store = createStore(connect(name));
  await store.load();
  return store;
}

const START = {
  type: 'start',
  wall: NINE_O_CLOCK,
  about: ABOUT,
  score: scoreOf(EASY_DAY),
  medium: 'sound',
} as const;
const tick = (n: number) => ({ type: 'tick', wall: NINE_O_CLOCK + n, track: ms(n) }) as const;

const ENTRY: LogEntry = {
  format: 'towpath-log/2',
  id: ABOUT.id,
  programme: ABOUT.programme,
  group: ABOUT.group,
  week: 1,
  session: 1,
  plan: ABOUT.plan,
  target: 50,
  startedAt: NINE_O_CLOCK,
  offsetMinutes: 0,
  zone: 'Europe/London',
  localDate: '2027-03-07',
  outcome: 'finished',
  doneSeconds: 390,
  activeSeconds: 390,
  covered: [[0, 390]],
  feeling: {},
  how: 'app',
};

const lease = (tab: string, at = 0) => ({ session: ABOUT.id, tab, beatAt: NINE_O_CLOCK + at });

describe('the store', () => {
  it('STORE-1 gives back what was put, programme text exactly as it came', async () => {
    const name = freshName();
    const store = await opened(name);
    const text = '{ "format" : "towpath-programme/1",  "x": "\\u00e9" }\n';
    await store.putProgramme({ id: 'p', text, cameAt: 5 });
    await store.putChoice('p', 'wren');
    await store.putSettings({ talk: 'many', mode: 'watch', vibration: false, appearance: 'dark' });
    await store.putEntry(ENTRY);
    const again = await opened(name).then((other) => other.load());
    expect(again.ok && again.value).toMatchObject({
      programmes: [{ id: 'p', text, cameAt: 5 }],
      choices: { p: 'wren' },
      settings: { talk: 'many', mode: 'watch' },
      log: [ENTRY],
      journals: [],
    });
  });

  it('STORE-7 how a programme is gone through, and who the person is in it, are kept by programme', async () => {
    const name = freshName();
    const store = await opened(name);
    const following = {
      format: 'towpath-following/1',
      programmeId: 'p',
      startedOn: '2027-03-08',
      pauses: [{ from: '2027-03-15', why: 'illness' }],
      decisions: [{ on: '2027-03-20', week: 2, group: 'wren', why: 're-entry' }],
    } as const;
    const person = {
      format: 'towpath-person/1',
      programmeId: 'p',
      secret: 'a secret',
      name: 'Rowan',
      told: [{ at: NINE_O_CLOCK, ids: ['one'] }],
    } as const;
    await store.putFollowing({ ...following, programmeId: 'another' });
    await store.putFollowing({ ...following, pauses: [] });
    await store.putFollowing(following);
    await store.putPerson({ ...person, told: [] });
    await store.putPerson(person);
    const again = await opened(name);
    const all = await again.load();
    expect(all.ok && all.value.following).toEqual([
      { ...following, programmeId: 'another' },
      following,
    ]);
    expect(await again.people()).toEqual({ ok: true, value: [person] });
  });

  it('STORE-8 one entry is taken out for good, and no other with it', async () => {
    const name = freshName();
    const store = await opened(name);
    await store.putEntry(ENTRY);
    await store.putEntry({ ...ENTRY, id: 'stays' });
    expect(await store.removeEntry(ENTRY.id)).toEqual({ ok: true, value: undefined });
    expect(await store.removeEntry('never there')).toEqual({ ok: true, value: undefined });
    const all = await opened(name).then((other) => other.load());
    expect(all.ok && all.value.log).toEqual([{ ...ENTRY, id: 'stays' }]);
  });

  it('JRNL-4 the journal gives its events back in the order in which they were written', async () => {
    const store = await opened();
    await store.takeLease(lease('a'), false);
    await store.append(ABOUT.id, 'a', [START], true);
    for (let n = 1; n <= 20; n++) await store.append(ABOUT.id, 'a', [tick(n)], false);
    const journals = await store.journals();
    expect(journals.ok && journals.value).toEqual([
      { session: ABOUT.id, events: [START, ...Array.from({ length: 20 }, (_, i) => tick(i + 1))] },
    ]);
  });

  it('JRNL-7 closing puts the entry in, takes the journal out and frees the lease, all at once', async () => {
    const store = await opened();
    await store.takeLease(lease('a'), false);
    await store.append(ABOUT.id, 'a', [START, tick(1)], true);
    await store.append('another', 'a', [tick(7)], false);
    expect(await store.closeSession(ABOUT.id, 'a', ENTRY)).toMatchObject({ ok: true });
    const all = await store.load();
    expect(all.ok && all.value.log).toEqual([ENTRY]);
    expect(all.ok && all.value.journals.map(({ session }) => session)).toEqual(['another']);
    expect(await store.lease()).toEqual({ ok: true, value: undefined });
  });

  it('JRNL-7 closing that fails leaves entry, journal and lease as they were', async () => {
    const store = await opened();
    await store.takeLease(lease('a'), false);
    await store.append(ABOUT.id, 'a', [START], true);
    // An entry that cannot be stored: a function has no copy.
    const broken = { ...ENTRY, feeling: { note: () => '' } } as unknown as LogEntry;
    expect(await store.closeSession(ABOUT.id, 'a', broken)).toMatchObject({ ok: false });
    const all = await store.load();
    expect(all.ok && all.value.log).toEqual([]);
    expect(all.ok && all.value.journals).toHaveLength(1);
    expect((await store.lease()).ok).toBe(true);
  });

  it('JRNL-7 closed twice, a session is one entry, and what was felt is not written over', async () => {
    const store = await opened();
    await store.closeSession(ABOUT.id, 'a', ENTRY);
    const felt = { ...ENTRY, feeling: { effort: 6 } };
    await store.putEntry(felt);
    await store.closeSession(ABOUT.id, 'a', ENTRY);
    const all = await store.load();
    expect(all.ok && all.value.log).toEqual([felt]);
  });

  it('JRNL-8 a tab whose session was taken over is refused, and one whose session is logged too', async () => {
    const store = await opened();
    await store.takeLease(lease('a'), false);
    await store.append(ABOUT.id, 'a', [START], true);
    expect(await store.takeLease(lease('b', 31_000), false)).toEqual({ ok: true, value: true });
    const refused = { ok: false, error: { code: 'not-ours' } };
    expect(await store.append(ABOUT.id, 'a', [tick(1)], false)).toMatchObject(refused);
    expect(await store.closeSession(ABOUT.id, 'a', ENTRY)).toMatchObject(refused);
    expect(await store.beat(lease('a', 32_000))).toEqual({ ok: true, value: false });
    await store.closeSession(ABOUT.id, 'b', ENTRY);
    expect(await store.append(ABOUT.id, 'a', [tick(1)], false)).toMatchObject(refused);
    expect(await store.beat(lease('a', 33_000))).toEqual({ ok: true, value: false });
    const journals = await store.journals();
    expect(journals.ok && journals.value).toEqual([]);
  });

  it('JRNL-8 of two tabs that ask at the same moment one gets the lease', async () => {
    const name = freshName();
    const [one, two] = await Promise.all([opened(name), opened(name)]);
    const taken = await Promise.all([
      one.takeLease(lease('a'), false),
      two.takeLease({ ...lease('b'), session: 'another' }, false),
    ]);
    expect(taken.filter((result) => result.ok && result.value)).toHaveLength(1);
  });

  it('STORE-2 what a later version wrote is read, exported, and never changed', async () => {
    const name = freshName();
    const store = await opened(name);
    await store.putChoice('p', 'wren');
    await store.putEntry(ENTRY);
    const later = await openDB(name, VERSION + 1, {
      upgrade: (db) => void db.createObjectStore('seals'),
    });
    await later.put('seals', 'a seal', 'p');
    later.close();

    const old = await opened(name);
    const all = await old.load();
    expect(all.ok && all.value.choices).toEqual({ p: 'wren' });
    expect(all.ok && all.value.log).toEqual([ENTRY]);
    expect(await old.putChoice('p', 'curlew')).toMatchObject({
      ok: false,
      error: { code: 'newer' },
    });
    const everything = await createRecordsStore(connect(name)).everything();
    expect(everything.ok && everything.value).toMatchObject({
      seals: [['p', 'a seal']],
      choices: [['p', 'wren']],
    });
  });

  it('STORE-3 gives way to a tab with a later version, and tells that it can no longer write', async () => {
    const name = freshName();
    const store = await opened(name);
    await store.putChoice('p', 'wren');
    const later = await openDB(name, VERSION + 1);
    expect(later.version).toBe(VERSION + 1);
    later.close();
    expect(await store.putChoice('p', 'curlew')).toMatchObject({
      ok: false,
      error: { code: 'newer' },
    });
    expect((await store.load()).ok).toBe(true);
  });

  it('STORE-4 a connection that was lost is opened anew, and the write done once', async () => {
    const name = freshName();
    const connection = connect(name);
    const store = createStore(connection);
    await store.load();
    const real = IDBDatabase.prototype.transaction;
    let lost = 0;
    IDBDatabase.prototype.transaction = function (...args) {
      if (lost++ === 0) throw new DOMException('Connection lost', 'InvalidStateError');
      return real.apply(this, args);
    };
    try {
      expect(await store.putChoice('p', 'wren')).toMatchObject({ ok: true });
    } finally {
      IDBDatabase.prototype.transaction = real;
    }
    expect(lost).toBe(2);
    const all = await store.load();
    expect(all.ok && all.value.choices).toEqual({ p: 'wren' });
  });

  it('STORE-4 a connection that is lost again is told, and nothing is thrown', async () => {
    const store = await opened();
    const real = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = () => {
      throw new DOMException('Connection lost', 'UnknownError');
    };
    try {
      expect(await store.putChoice('p', 'wren')).toMatchObject({
        ok: false,
        error: { code: 'lost' },
      });
    } finally {
      IDBDatabase.prototype.transaction = real;
    }
    expect(await store.putChoice('p', 'wren')).toMatchObject({ ok: true });
  });

  it('STORE-5 nothing is written before what is there was read', async () => {
    const name = freshName();
    const order: string[] = [];
    const connection = connect(name);
    const store = createStore({
      ...connection,
      read: (stores, job) => {
        order.push('read');
        return connection.read(stores, job);
      },
      write: (stores, job, strict) => {
        order.push('write');
        return connection.write(stores, job, strict);
      },
    });
    await store.putChoice('p', 'wren');
    expect(order).toEqual(['read', 'write']);
  });

  it('STORE-5 after a load that failed a write loads first, and fails when that fails', async () => {
    const connection = connect(freshName());
    let broken = true;
    const trouble = { ok: false, error: { code: 'lost', detail: '' } } as const;
    const store = createStore({
      ...connection,
      read: async (stores, job) => (broken ? trouble : connection.read(stores, job)),
    });
    expect(await store.load()).toEqual(trouble);
    expect(await store.putChoice('p', 'wren')).toEqual(trouble);
    broken = false;
    expect(await store.putChoice('p', 'wren')).toMatchObject({ ok: true });
  });

  it('STORE-6 migrations have names of their own and their number is the version', async () => {
    expect(new Set(MIGRATIONS.map(({ name }) => name)).size).toBe(VERSION);
    const name = freshName();
    await opened(name);
    const db = await openDB(name);
    expect(db.version).toBe(VERSION);
    db.close();
    await deleteDB(name);
  });
});
