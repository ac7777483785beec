import type { Database } from './schema.ts';

/** A change of the database's shape. Its place in the list is its version, from 1. */
export interface Migration {
  readonly name: string;
  up(db: Database): void;
}

/**
 * Append only: a migration that was ever published is never changed. Each has a frozen copy of a
 * database from before and after it in `tests/fixtures/store/`.
 */
export const MIGRATIONS: readonly Migration[] = [
  {
    name: 'first-stores',
    up(db) {
      db.createObjectStore('programmes', { keyPath: 'id' });
      db.createObjectStore('choices');
      db.createObjectStore('settings');
      db.createObjectStore('journal', { autoIncrement: true }).createIndex('session', 'session');
      db.createObjectStore('log', { keyPath: 'id' }).createIndex('startedAt', 'startedAt');
      db.createObjectStore('meta');
    },
  },
  {
    name: 'keys-and-what-was-sent',
    up(db) {
      db.createObjectStore('keys');
      db.createObjectStore('sent', { keyPath: 'id' });
    },
  },
  {
    name: 'sheets',
    up(db) {
      db.createObjectStore('sheets', { keyPath: 'key' });
    },
  },
  {
    name: 'following-and-people',
    up(db) {
      db.createObjectStore('following', { keyPath: 'programmeId' });
      db.createObjectStore('people', { keyPath: 'programmeId' });
    },
  },
  {
    name: 'boards',
    up(db) {
      db.createObjectStore('heard', { keyPath: 'key' });
      db.createObjectStore('days', { keyPath: 'key' });
      db.createObjectStore('boards', { keyPath: 'programmeId' });
    },
  },
];

/** The version that this app makes and writes. */
export const VERSION = MIGRATIONS.length;
