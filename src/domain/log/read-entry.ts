import type { LogEntry } from './entry.ts';

/** A change of an entry's shape: from one format to the next. */
export interface EntryMigration {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  up(entry: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>>;
}

/** The format that this version writes. */
export const LOG_FORMAT = 'towpath-log/2';

/** Append only, oldest first. Each has a frozen entry in `tests/fixtures/log/`. */
export const ENTRY_MIGRATIONS: readonly EntryMigration[] = [
  {
    name: 'how-it-was-done',
    from: 'towpath-log/1',
    to: 'towpath-log/2',
    // Until then nothing came into the log but what the app had led.
    up: (entry) => ({ ...entry, how: 'app' }),
  },
];

/**
 * A stored entry in today's shape, carried over from older ones step by step.
 *
 * @returns nothing for an entry of a newer format: it stays stored as it is, is exported with the
 * rest, and is not shown
 */
export function readEntry(
  stored: unknown,
  migrations: readonly EntryMigration[] = ENTRY_MIGRATIONS,
  format: string = LOG_FORMAT,
): LogEntry | undefined {
  if (typeof stored !== 'object' || stored === null) return undefined;
  let entry = stored as Readonly<Record<string, unknown>>;
  for (const { from, to, up } of migrations) {
    if (entry.format === from) entry = { ...up(entry), format: to };
  }
  return entry.format === format ? (entry as unknown as LogEntry) : undefined;
}
