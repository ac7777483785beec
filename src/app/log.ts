import { createStore, type StoreApi } from 'zustand/vanilla';
import type { LogEntry } from '../domain/log/entry.ts';
import { readEntry } from '../domain/log/read-entry.ts';
import type { LogState } from './contract.ts';
import type { Store } from './ports.ts';
import type { Queue } from './queue.ts';

/** The finished sessions of this phone, newest first. */
export function createLog(store: Store, queue: Queue): StoreApi<LogState> {
  return createStore<LogState>((set, get) => {
    const without = (entryId: string) => get().entries.filter(({ id }) => id !== entryId);
    return {
      ready: false,
      entries: [],
      unsaved: false,
      async write(entry) {
        set({ entries: newestFirst([...without(entry.id), entry]) });
        await queue.push(() => store.putEntry(entry));
      },
      async remove(entryId) {
        set({ entries: without(entryId) });
        await queue.push(() => store.removeEntry(entryId));
      },
    };
  });
}

/** Two of the same moment stand the same way whatever was read first. */
const newestFirst = (entries: readonly LogEntry[]): readonly LogEntry[] =>
  [...entries].sort((a, b) => b.startedAt - a.startedAt || (a.id < b.id ? -1 : 1));

/** Shows what is stored, as far as this version can read it. */
export const showStoredEntries = (log: StoreApi<LogState>, stored: readonly unknown[]): void =>
  showEntries(
    log,
    stored.flatMap((entry) => readEntry(entry) ?? []),
  );

/** Shows entries; one that is there already is not replaced. */
export function showEntries(log: StoreApi<LogState>, entries: readonly LogEntry[]): void {
  const byId = new Map<string, LogEntry>();
  for (const entry of [...entries, ...log.getState().entries]) byId.set(entry.id, entry);
  log.setState({ entries: newestFirst([...byId.values()]) });
}
