import type { Store, Stored, StoredJournal, StoreProblem } from '../../app/ports.ts';
import { fail, type Result } from '../../domain/result.ts';
import type { SessionEvent } from '../../domain/session/event.ts';
import type { Connection } from './connection.ts';
import type { StoreName, Transaction } from './schema.ts';
import type { Seldom } from './seldom.ts';

const ALL: StoreName[] = [
  'programmes',
  'choices',
  'settings',
  'journal',
  'log',
  'meta',
  'following',
];

type Outcome<T> = Promise<Result<T, StoreProblem>>;

/** The phone's memory of programmes, settings, the running session and the log. */
export function createStore(connection: Connection): Store {
  let loading: Promise<Result<Stored, StoreProblem>> | undefined;
  const load = (): Promise<Result<Stored, StoreProblem>> => {
    loading = connection.read(ALL, readAll);
    return loading;
  };

  /** Nothing is written over what has not been read: a failed load is tried again first. */
  async function write<T>(
    stores: StoreName[],
    job: (tx: Transaction) => Promise<T>,
    strict = false,
  ): Outcome<T> {
    const first = await (loading ?? load());
    const read = first.ok ? first : await load();
    return read.ok ? connection.write(stores, job, strict) : read;
  }

  const put = (name: StoreName, value: unknown, key?: string) =>
    write([name], async (tx) => {
      await storeOf(tx, name).put(value, key);
    });

  /** Fetched when it is first asked: no first screen runs a session. */
  const later =
    <A extends unknown[], T>(pick: (seldom: Seldom) => (...args: A) => Outcome<T>) =>
    async (...args: A): Outcome<T> => {
      try {
        const { createSeldom } = await import('./seldom.ts');
        return await pick(createSeldom(connection, write))(...args);
      } catch (error) {
        return fail({ code: 'lost', detail: String(error) });
      }
    };

  return {
    load,
    journals: () => connection.read(['journal'], readJournals),
    putProgramme: (programme) => put('programmes', programme),
    putChoice: (programmeId, groupId) => put('choices', groupId, programmeId),
    putSettings: (settings) => put('settings', settings, 'settings'),
    putEntry: (entry) => put('log', entry),
    removeEntry: (id) => write(['log'], (tx) => storeOf(tx, 'log').delete(id)),
    putFollowing: (following) => put('following', following),
    people: later((seldom) => seldom.people),
    putPerson: (person) => put('people', person),
    append: later((seldom) => seldom.append),
    closeSession: later((seldom) => seldom.closeSession),
    lease: later((seldom) => seldom.lease),
    takeLease: later((seldom) => seldom.takeLease),
    beat: later((seldom) => seldom.beat),
    dropLease: later((seldom) => seldom.dropLease),
  };
}

/** idb's types cannot follow a store's name through a list of names. */
// biome-ignore lint/suspicious/noExplicitAny: see above
export const storeOf = (tx: Transaction, name: StoreName): any => tx.objectStore(name);

async function readAll(tx: Transaction): Promise<Stored> {
  const choices = storeOf(tx, 'choices');
  const [programmes, groups, ids, settings, log, following, journals] = await Promise.all([
    storeOf(tx, 'programmes').getAll(),
    choices.getAll(),
    choices.getAllKeys(),
    storeOf(tx, 'settings').get('settings'),
    storeOf(tx, 'log').getAll(),
    storeOf(tx, 'following').getAll(),
    readJournals(tx),
  ]);
  const chosen = Object.fromEntries(ids.map((id: string, i: number) => [id, groups[i]]));
  return { programmes, choices: chosen, settings: settings ?? {}, log, following, journals };
}

/** Journals that this version can read, oldest first; others stay where they are. */
async function readJournals(tx: Transaction): Promise<StoredJournal[]> {
  const bySession = new Map<string, SessionEvent[]>();
  for (const record of await storeOf(tx, 'journal').getAll()) {
    if (record.format !== 'towpath-journal/1') continue;
    const events = bySession.get(record.session) ?? [];
    events.push(record.event);
    bySession.set(record.session, events);
  }
  return [...bySession].map(([session, events]) => ({ session, events }));
}
