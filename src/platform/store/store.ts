import type { Store, Stored, StoredJournal, StoreProblem } from '../../app/ports.ts';
import type { Result } from '../../domain/result.ts';
import type { SessionEvent } from '../../domain/session/event.ts';
import { mayTake } from '../../domain/session/lease.ts';
import { type Connection, Refusal } from './connection.ts';
import type { StoreName, Transaction } from './schema.ts';

const ALL: StoreName[] = [
  'programmes',
  'choices',
  'settings',
  'journal',
  'log',
  'meta',
  'following',
];

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
  ): Promise<Result<T, StoreProblem>> {
    const first = await (loading ?? load());
    const read = first.ok ? first : await load();
    return read.ok ? connection.write(stores, job, strict) : read;
  }

  const put = (name: StoreName, value: unknown, key?: string) =>
    write([name], async (tx) => {
      await storeOf(tx, name).put(value, key);
    });

  return {
    load,
    journals: () => connection.read(['journal'], readJournals),
    putProgramme: (programme) => put('programmes', programme),
    putChoice: (programmeId, groupId) => put('choices', groupId, programmeId),
    putSettings: (settings) => put('settings', settings, 'settings'),
    putEntry: (entry) => put('log', entry),
    removeEntry: (id) => write(['log'], (tx) => storeOf(tx, 'log').delete(id)),
    putFollowing: (following) => put('following', following),
    people: () =>
      connection.read(['people'], async (tx) =>
        (await storeOf(tx, 'people').getAll()).filter(isPerson),
      ),
    putPerson: (person) => put('people', person),
    append: (session, tab, events, strict) =>
      write(
        ['journal', 'log', 'meta'],
        async (tx) => {
          await refuseOthers(tx, session, tab);
          const journal = storeOf(tx, 'journal');
          for (const event of events) {
            await journal.add({ format: 'towpath-journal/1', session, event });
          }
        },
        strict,
      ),
    closeSession: (session, tab, entry) =>
      write(
        ['journal', 'log', 'meta'],
        async (tx) => {
          await refuseOthers(tx, session, tab, true);
          if (entry !== undefined) await putEntryOnce(tx, entry);
          const keys = await storeOf(tx, 'journal').index('session').getAllKeys(session);
          for (const key of keys) await storeOf(tx, 'journal').delete(key);
          const lease = await storeOf(tx, 'meta').get('lease');
          if (lease?.session === session) await storeOf(tx, 'meta').delete('lease');
        },
        true,
      ),
    lease: () => connection.read(['meta'], (tx) => storeOf(tx, 'meta').get('lease')),
    takeLease: (lease, knownGone) =>
      write(
        ['meta'],
        async (tx) => {
          const meta = storeOf(tx, 'meta');
          const taken = mayTake(await meta.get('lease'), lease.tab, lease.beatAt, knownGone);
          if (taken) await meta.put(lease, 'lease');
          return taken;
        },
        true,
      ),
    beat: (lease) =>
      write(['log', 'meta'], async (tx) => {
        const meta = storeOf(tx, 'meta');
        const holder = (await meta.get('lease'))?.tab ?? lease.tab;
        const ours = holder === lease.tab && !(await isLogged(tx, lease.session));
        if (ours) await meta.put(lease, 'lease');
        return ours;
      }),
    dropLease: (tab) =>
      write(['meta'], async (tx) => {
        const meta = storeOf(tx, 'meta');
        if ((await meta.get('lease'))?.tab === tab) await meta.delete('lease');
      }),
    exportAll: connection.readEverything,
  };
}

const isPerson = ({ format }: { format?: unknown }): boolean => format === 'towpath-person/1';

/** idb's types cannot follow a store's name through a list of names. */
// biome-ignore lint/suspicious/noExplicitAny: see above
const storeOf = (tx: Transaction, name: StoreName): any => tx.objectStore(name);

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

/** What the person has already said about a session is not written over. */
async function putEntryOnce(tx: Transaction, entry: { readonly id: string }): Promise<void> {
  if (!(await isLogged(tx, entry.id))) await storeOf(tx, 'log').put(entry);
}

/** A session whose entry is in the log is over, whoever wrote it. */
const isLogged = async (tx: Transaction, session: string): Promise<boolean> =>
  (await storeOf(tx, 'log').getKey(session)) !== undefined;

/** Another tab took this session over: this one no longer writes to it. */
async function refuseOthers(
  tx: Transaction,
  session: string,
  tab: string,
  closing = false,
): Promise<void> {
  const lease = await storeOf(tx, 'meta').get('lease');
  const taken = lease !== undefined && lease.session === session && lease.tab !== tab;
  if (taken || (!closing && (await isLogged(tx, session)))) {
    throw new Refusal({ code: 'not-ours', detail: `session ${session} runs in another tab` });
  }
}
