import { type OpenDBCallbacks, openDB } from 'idb';
import type { StoreProblem } from '../../app/ports.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { MIGRATIONS, VERSION } from './migrations.ts';
import type { Database, StoreName, TowpathSchema, Transaction } from './schema.ts';

/** Wrapped so that a job's own reason for giving up is told from a fault of the database. */
export class Refusal extends Error {
  readonly problem: StoreProblem;
  constructor(problem: StoreProblem) {
    super(problem.detail);
    this.problem = problem;
  }
}

/** The phone's database: jobs in transactions, each with its result. */
export interface Connection {
  /** Begins to open the database before anything asks for it. */
  begin(): void;
  read<T>(
    stores: StoreName[],
    job: (tx: Transaction) => Promise<T>,
  ): Promise<Result<T, StoreProblem>>;
  write<T>(
    stores: StoreName[],
    job: (tx: Transaction) => Promise<T>,
    strict?: boolean,
  ): Promise<Result<T, StoreProblem>>;
  /** Reads some of the stores that are there, whatever version made them. */
  readWith<T>(
    pick: (there: readonly string[]) => readonly string[],
    job: (tx: Transaction, names: readonly string[]) => Promise<T>,
  ): Promise<Result<T, StoreProblem>>;
  close(): void;
}

/**
 * The one way to the database. Success means that the transaction completed. A connection that
 * was lost (an iPhone drops it while the page is in the background, and asking again on the same
 * one fails: WebKit bug 277615) is opened anew and the job done once more, then the loss is told.
 * A job may therefore run twice, and does nothing but read and write in its transaction.
 */
export function connect(name = 'towpath'): Connection {
  let opened: Promise<{ db: Database; newer: boolean }> | undefined;

  const forget = (): void => {
    const before = opened;
    opened = undefined;
    void before?.then(({ db }) => db.close()).catch(() => {});
  };

  const callbacks: OpenDBCallbacks<TowpathSchema> = {
    upgrade(db, from) {
      for (const migration of MIGRATIONS.slice(from)) migration.up(db);
    },
    // Another tab has a newer version: it must not wait for this one.
    blocking: forget,
    terminated: () => {
      opened = undefined;
    },
  };

  async function open(): Promise<{ db: Database; newer: boolean }> {
    try {
      return { db: await openDB<TowpathSchema>(name, VERSION, callbacks), newer: false };
    } catch (error) {
      if (!isNamed(error, 'VersionError')) throw error;
      // Written by a newer version of the app: read it, never change it.
      const { blocking, terminated } = callbacks;
      const db = await openDB<TowpathSchema>(name, undefined, {
        blocking,
        terminated,
      } as typeof callbacks);
      return { db, newer: true };
    }
  }

  async function once<T>(
    stores: StoreName[] | 'all',
    mode: 'readonly' | 'readwrite',
    strict: boolean,
    job: (tx: Transaction) => Promise<T>,
  ): Promise<T> {
    opened ??= open();
    const { db, newer } = await opened;
    if (newer && mode === 'readwrite') {
      throw new Refusal({ code: 'newer', detail: `database version ${db.version}` });
    }
    const durability = strict ? 'strict' : 'relaxed';
    const names = stores === 'all' ? [...db.objectStoreNames] : stores;
    const tx = db.transaction(names, mode, { durability }) as unknown as Transaction;
    try {
      const value = await job(tx);
      await tx.done;
      return value;
    } catch (error) {
      // The request only says that it was aborted; the transaction says why.
      const cause = error instanceof Refusal ? error : (tx.error ?? error);
      abort(tx);
      throw cause;
    }
  }

  async function run<T>(
    stores: StoreName[] | 'all',
    mode: 'readonly' | 'readwrite',
    strict: boolean,
    job: (tx: Transaction) => Promise<T>,
  ): Promise<Result<T, StoreProblem>> {
    for (let attempt = 1; ; attempt++) {
      try {
        return ok(await once(stores, mode, strict, job));
      } catch (error) {
        if (error instanceof Refusal) return fail(error.problem);
        if (isNamed(error, 'QuotaExceededError')) return fail(problem('full', error));
        forget();
        if (attempt === 2) return fail(problem('lost', error));
      }
    }
  }

  return {
    begin() {
      opened ??= open();
      // Who asks first is told what went wrong, and tries again.
      opened.catch(() => undefined);
    },
    read: (stores, job) => run(stores, 'readonly', false, job),
    readWith: (pick, job) =>
      run('all', 'readonly', false, (tx) => job(tx, pick([...tx.objectStoreNames]))),
    write: (stores, job, strict = false) => run(stores, 'readwrite', strict, job),
    close: forget,
  };
}

/** A transaction that has ended already cannot be aborted, and need not be. */
function abort(tx: Transaction): void {
  tx.done.catch(() => {});
  try {
    tx.abort();
  } catch {
    return;
  }
}

const isNamed = (error: unknown, name: string): boolean =>
  error instanceof Error || error instanceof DOMException ? error.name === name : false;

const problem = (code: StoreProblem['code'], error: unknown): StoreProblem => ({
  code,
  detail: error instanceof Error ? `${error.name}: ${error.message}` : String(error),
});
