import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';
import type { Settings } from '../../app/contract.ts';
import type { Sent } from '../../app/exchange-contract.ts';
import type { OwnKeys, StoredSheet } from '../../app/exchange-ports.ts';
import type { StoredProgramme } from '../../app/ports.ts';
import type { Attendance } from '../../domain/board/attendance.ts';
import type { BoardSetup } from '../../domain/board/setup.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import type { Following } from '../../domain/log/following.ts';
import type { Person } from '../../domain/log/person.ts';
import type { SessionEvent } from '../../domain/session/event.ts';
import type { Lease } from '../../domain/session/lease.ts';

/** What one record of the journal is. The format says who can read it back. */
export interface JournalRecord {
  readonly format: 'towpath-journal/1';
  readonly session: string;
  readonly event: SessionEvent;
}

/** The leader's keys. The private halves cannot be read out, only used. */
export interface LeaderRecord extends OwnKeys {
  readonly format: 'towpath-leader/1';
  readonly signWith: CryptoKey;
  readonly openWith: CryptoKey;
}

/** What is known of one person, as it lies in the database: see `heard-row.ts`. */
export interface HeardRow {
  readonly format: 'towpath-heard-row/1';
  readonly key: string;
  /** A `Heard`, its sessions as lists of values. */
  readonly json: string;
}

/** The stores of the database, and what lies in each. */
export interface TowpathSchema extends DBSchema {
  /** Programme files, text exactly as it came in, by programme id. */
  programmes: { key: string; value: StoredProgramme };
  /** Group id by programme id. */
  choices: { key: string; value: string };
  /** One record, under `settings`. */
  settings: { key: string; value: Partial<Settings> };
  /** In the order in which things happened. */
  journal: { key: number; value: JournalRecord; indexes: { session: string } };
  /** Log entries by id. */
  log: { key: string; value: LogEntry; indexes: { startedAt: number } };
  /** One record, under `lease`. */
  meta: { key: string; value: Lease };
  /** One record, under `leader`. */
  keys: { key: string; value: LeaderRecord };
  /** What was last sent from this phone, by programme id. */
  sent: { key: string; value: Sent };
  /** Programmes in writing, by a key of this phone. */
  sheets: { key: string; value: StoredSheet };
  /** How the person goes through each programme, by programme id. */
  following: { key: string; value: Following };
  /** Who the person is to each programme's leader, by programme id. */
  people: { key: string; value: Person };
  /** What participants told this device's leader, by programme and person. */
  heard: { key: string; value: HeardRow };
  /** Who came to the group, by programme and day. */
  days: { key: string; value: Attendance };
  /** What the leader said of a programme's people, by programme id. */
  boards: { key: string; value: BoardSetup };
}

/** The name of a store. */
export type StoreName = StoreNames<TowpathSchema>;
/** The database, open. */
export type Database = IDBPDatabase<TowpathSchema>;
/** A transaction over some of the stores. */
export type Transaction = IDBPTransaction<TowpathSchema, StoreName[], 'readonly' | 'readwrite'>;
