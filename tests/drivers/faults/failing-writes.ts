import 'fake-indexeddb/auto';

/** What the browser says of a transaction that it gives up. */
export type Reason = 'UnknownError' | 'QuotaExceededError' | 'AbortError';

/** Of fake-indexeddb: ends a transaction for a reason of the database's own, as browsers do. */
interface Abortable extends IDBTransaction {
  _abort(reason: Reason): void;
}

export interface FailingWrites {
  /** Transactions that have written, so far. */
  readonly written: number;
  /** Those among them that were made to fail. */
  readonly failed: number;
  /** The names of the stores of those that failed. */
  readonly stores: readonly string[];
  stop(): void;
}

const METHODS = ['put', 'add', 'delete', 'clear'] as const;

/**
 * From now on transactions that write fail as asked, after what they wrote was accepted: that is
 * when a real database finds its disk full or broken.
 *
 * @param fails whether the transaction of this number fails, counted from 1 in their order
 */
export function failWrites(
  fails: (number: number) => boolean,
  reason: Reason = 'UnknownError',
): FailingWrites {
  const known = new WeakSet<IDBTransaction>();
  const self = { written: 0, failed: 0, stores: [] as string[] };
  const proto = IDBObjectStore.prototype as unknown as Record<string, unknown>;
  const own = METHODS.map((name) => [name, proto[name]] as const);
  for (const [name, real] of own) {
    proto[name] = function (this: IDBObjectStore, ...args: unknown[]): IDBRequest {
      const request = (real as (...given: unknown[]) => IDBRequest).apply(this, args);
      const tx = this.transaction as Abortable;
      if (known.has(tx) || tx.mode === 'versionchange') return request;
      known.add(tx);
      self.written += 1;
      if (fails(self.written)) {
        self.failed += 1;
        self.stores.push([...tx.objectStoreNames].join('+'));
        request.addEventListener('success', () => tx._abort(reason));
      }
      return request;
    };
  }
  return Object.assign(self, {
    stop() {
      for (const [name, real] of own) proto[name] = real;
    },
  });
}
