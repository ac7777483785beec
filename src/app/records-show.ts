import type { StoreApi } from 'zustand/vanilla';
import type { Row, Stores } from '../domain/exchange/backup.ts';
import { asEntry, asFollowing } from '../domain/exchange/backup-shapes.ts';
import { mergeEntries } from '../domain/exchange/merge-records.ts';
import type { LogEntry } from '../domain/log/entry.ts';
import type { Programme } from '../domain/programme/programme.ts';
import type { FollowingState, LogState, ProgrammesState, Settings } from './contract.ts';
import type { Came, ReceivedState } from './exchange-contract.ts';
import { cameOf } from './exchange-judge.ts';
import { readProgramme } from './exchange-reader.ts';
import type { StoredProgramme } from './ports.ts';
import type { SettingsHolder } from './settings.ts';

interface Shown {
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: SettingsHolder;
  readonly log: StoreApi<LogState>;
  readonly following: StoreApi<FollowingState>;
  readonly received: StoreApi<ReceivedState>;
}

const values = (rows: readonly Row[] | undefined): readonly unknown[] =>
  (rows ?? []).map(([, value]) => value);

/** Shows what has just been written. What was answered while it was written stays. */
export function showRestored(
  { programmes, settings, log, following, received }: Shown,
  stores: Stores,
): void {
  const [stored] = values(stores.settings);
  settings.show((stored ?? {}) as Partial<Settings>);
  showProgrammes(programmes, stores);
  showLog(log, values(stores.log));
  const read = values(stores.following).flatMap((value) => asFollowing(value) ?? []);
  following.setState({
    following: {
      ...following.getState().following,
      ...Object.fromEntries(read.map((each) => [each.programmeId, each])),
    },
  });
  const came = values(stores.programmes).flatMap(
    (value): Came | readonly [] => cameOf(value as StoredProgramme) ?? [],
  );
  received.setState({
    came: {
      ...received.getState().came,
      ...Object.fromEntries(came.map((each) => [each.id, each])),
    },
  });
}

function showProgrammes(programmes: StoreApi<ProgrammesState>, stores: Stores): void {
  const stored = (values(stores.programmes) as readonly StoredProgramme[])
    .toSorted((a, b) => a.cameAt - b.cameAt)
    .flatMap(({ id, text }): Programme[] => {
      const read = readProgramme(text);
      return read.ok ? [{ ...read.value, id }] : [];
    });
  const ids = new Set(stored.map(({ id }) => id));
  const { programmes: before, chosen } = programmes.getState();
  programmes.setState({
    programmes: [...before.filter(({ id }) => !ids.has(id)), ...stored],
    chosen: { ...chosen, ...(Object.fromEntries(stores.choices ?? []) as typeof chosen) },
  });
}

function showLog(log: StoreApi<LogState>, stored: readonly unknown[]): void {
  const byId = new Map<string, LogEntry>();
  for (const value of stored) {
    const entry = asEntry(value);
    if (entry !== undefined) byId.set(entry.id, entry);
  }
  for (const entry of log.getState().entries) {
    const there = byId.get(entry.id);
    byId.set(entry.id, there === undefined ? entry : mergeEntries(there, entry));
  }
  const entries = [...byId.values()].sort(
    (a, b) => b.startedAt - a.startedAt || (a.id < b.id ? -1 : 1),
  );
  log.setState({ entries });
}
