import type { Store } from '../../app/ports.ts';
import { mayTake } from '../../domain/session/lease.ts';
import { type Connection, Refusal } from './connection.ts';
import type { Transaction } from './schema.ts';
import { storeOf } from './store.ts';

/** What of the store no first screen needs: a session's journal and lease, and who the person is. */
export type Seldom = Pick<
  Store,
  'append' | 'closeSession' | 'lease' | 'takeLease' | 'beat' | 'dropLease' | 'people'
>;

/** @param write writes, once what is there has been read */
export const createSeldom = (connection: Connection, write: Connection['write']): Seldom => ({
  people: () =>
    connection.read(['people'], async (tx) =>
      (await storeOf(tx, 'people').getAll()).filter(isPerson),
    ),
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
});

const isPerson = ({ format }: { format?: unknown }): boolean => format === 'towpath-person/1';

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
