import type { BoardChange, BoardStore, Boards } from '../../app/board-contract.ts';
import type { Attendance } from '../../domain/board/attendance.ts';
import type { Heard } from '../../domain/board/heard.ts';
import type { BoardSetup } from '../../domain/board/setup.ts';
import { type Connection, Refusal } from './connection.ts';
import { fromRow, toRow } from './heard-row.ts';
import type { HeardRow, StoreName, Transaction } from './schema.ts';

const STORES = ['heard', 'days', 'boards'] as const satisfies readonly StoreName[];
type Name = (typeof STORES)[number];

/** A record of whatever version. */
type Row = Readonly<Record<string, unknown>>;

/** idb's types cannot follow a store's name through a list of names. */
interface Records {
  readonly keyPath: string;
  get(key: string): Promise<Row | undefined>;
  getAll(): Promise<Row[]>;
  put(value: unknown): Promise<unknown>;
  delete(key: string): Promise<void>;
}
const records = (tx: Transaction, name: Name): Records =>
  tx.objectStore(name) as unknown as Records;

/** Which version of each store's records this one reads. */
const FORMATS = {
  heard: 'towpath-heard-row/1',
  days: 'towpath-attendance/1',
  boards: 'towpath-board/1',
} as const satisfies Readonly<Record<Name, string>>;

const isOurs = (name: Name, row: Row): boolean => row.format === FORMATS[name];

/** People as text, and as what the text says: whoever did not change stays the same object. */
interface Reader {
  read(row: HeardRow): Heard | undefined;
  write(heard: Heard): HeardRow;
  /** People who are there no more are not kept in memory either. */
  keepOnly(keys: ReadonlySet<string>): void;
  drop(keys: readonly string[]): void;
}

function createReader(): Reader {
  const known = new Map<string, { readonly json: string; readonly heard: Heard }>();
  return {
    read({ key, json }) {
      const before = known.get(key);
      if (before?.json === json) return before.heard;
      const heard = fromRow({ json });
      if (heard !== undefined) known.set(key, { json, heard });
      return heard;
    },
    write(heard) {
      const row = toRow(heard);
      known.set(heard.key, { json: row.json, heard });
      return row;
    },
    keepOnly(keys) {
      for (const key of known.keys()) if (!keys.has(key)) known.delete(key);
    },
    drop(keys) {
      for (const key of keys) known.delete(key);
    },
  };
}

/** All records of a store, or those of some keys. */
const rowsOf = async (
  tx: Transaction,
  name: Name,
  keys: readonly string[] | undefined,
): Promise<readonly Row[]> => {
  if (keys === undefined) return records(tx, name).getAll();
  const rows = await Promise.all(keys.map((key) => records(tx, name).get(key)));
  return rows.filter((row) => row !== undefined);
};

/** What others told the leader, in the phone's database. Success means that the transaction completed. */
export function createBoardStore(connection: Connection): BoardStore {
  const reader = createReader();

  async function readAll(
    tx: Transaction,
    of: Parameters<BoardStore['change']>[1] = {},
  ): Promise<Boards> {
    const [heard, days, setups] = await Promise.all([
      rowsOf(tx, 'heard', of.heard),
      rowsOf(tx, 'days', of.days),
      rowsOf(tx, 'boards', undefined),
    ]);
    if (of.heard === undefined) reader.keepOnly(new Set(heard.map(({ key }) => String(key))));
    return {
      heard: heard.flatMap((row) =>
        isOurs('heard', row) ? (reader.read(row as unknown as HeardRow) ?? []) : [],
      ),
      days: days.filter((row) => isOurs('days', row)) as unknown as readonly Attendance[],
      setups: setups.filter((row) => isOurs('boards', row)) as unknown as readonly BoardSetup[],
    };
  }

  return {
    boards: () => connection.read([...STORES], (tx) => readAll(tx)),
    async change(job, of) {
      const done = await connection.write(
        [...STORES],
        async (tx) => {
          const change = job(await readAll(tx, of));
          await Promise.all(
            STORES.map((name) =>
              apply(tx, name, putsOf(change, name, reader), goneOf(change, name)),
            ),
          );
          return change;
        },
        true,
      );
      if (done.ok) reader.drop(done.value.gone?.heard ?? []);
      return done;
    },
  };
}

function putsOf(change: BoardChange, name: Name, reader: Reader): readonly unknown[] {
  if (name === 'heard') return (change.heard ?? []).map(reader.write);
  return (name === 'days' ? change.days : change.setups) ?? [];
}

function goneOf({ gone = {} }: BoardChange, name: Name): readonly string[] {
  return (name === 'boards' ? gone.setups : gone[name]) ?? [];
}

/** Asked for all at once: waiting for each costs a way to the database and back. */
async function apply(
  tx: Transaction,
  name: Name,
  puts: readonly unknown[],
  gone: readonly string[],
): Promise<void> {
  const store = records(tx, name);
  const keys = [...puts.map((value) => String((value as Row)[store.keyPath])), ...gone];
  const there = await Promise.all(keys.map((key) => store.get(key)));
  if (there.some((row) => row !== undefined && !isOurs(name, row)))
    throw new Refusal({ code: 'newer', detail: `a record of ${name}` });
  const asked = [...puts.map((value) => store.put(value)), ...gone.map((key) => store.delete(key))];
  // When another fails the transaction tells it; these are then only aborted with it.
  for (const each of asked) each.catch(() => undefined);
  await Promise.all(asked);
}
