import 'fake-indexeddb/auto';

export interface Closing {
  /** Transactions that were asked for, so far. */
  readonly asked: number;
  /** How often the connection was closed before one. */
  readonly closed: number;
  stop(): void;
}

/**
 * From now on the connection is closed without a word before transactions as asked: what an iPhone
 * does to a page in the background (WebKit bug 277615). The transaction is refused, as the
 * IndexedDB standard says, and so is each one after it on that connection.
 *
 * @param closes whether it is closed before the transaction of this number, counted from 1
 */
export function closeUnder(closes: (number: number) => boolean): Closing {
  const self = { asked: 0, closed: 0 };
  const proto = IDBDatabase.prototype;
  const real = proto.transaction;
  proto.transaction = function (...args) {
    // An upgrade is the database's own.
    if (String(args[1]) === 'versionchange') return real.apply(this, args);
    self.asked += 1;
    if (closes(self.asked)) {
      self.closed += 1;
      this.close();
    }
    return real.apply(this, args);
  };
  return Object.assign(self, {
    stop() {
      proto.transaction = real;
    },
  });
}
