import type { Row } from './backup.ts';
import { asEntry, asFollowing, asPerson, asSent, asSheet } from './backup-shapes.ts';
import { isSame } from './merge-fields.ts';
import type { NotTakenWhy } from './merge-programmes.ts';
import { mergeEntries, mergeFollowing, mergePeople, newerOf } from './merge-records.ts';
import { isPlainObject } from './own.ts';

/** A record as the rules below see it: what cannot be read is a reason. */
type Reader<T> = (value: unknown) => T | undefined;

interface Kind<T> {
  /** The highest version that can be read. */
  readonly version: number;
  readonly read: Reader<T>;
  readonly keyOf: (value: T) => string;
  readonly merge: (a: T, b: T, order: (programme: string) => number) => T;
  /** Which programme of the phone it is about, where its id may be another here. */
  readonly about?: { of(value: T): string; moved(value: T, id: string): T };
}

/** Keeps the compiler from mixing two kinds up. */
const kind = <T>(made: Kind<T>): Kind<unknown> => made as unknown as Kind<unknown>;

/** The stores whose records are merged one by one, in the order in which they are told. */
export const KINDS: Readonly<Record<string, Kind<unknown>>> = {
  log: kind({
    version: 2,
    read: asEntry,
    keyOf: ({ id }) => id,
    merge: mergeEntries,
    about: {
      of: ({ programme }) => programme.id,
      moved: (entry, id) => ({ ...entry, programme: { ...entry.programme, id } }),
    },
  }),
  following: kind({
    version: 1,
    read: asFollowing,
    keyOf: ({ programmeId }) => programmeId,
    merge: (a, b, order) => mergeFollowing(a, b, order(a.programmeId)),
    about: {
      of: ({ programmeId }) => programmeId,
      moved: (value, programmeId) => ({ ...value, programmeId }),
    },
  }),
  people: kind({
    version: 1,
    read: asPerson,
    keyOf: ({ programmeId }) => programmeId,
    merge: mergePeople,
    about: {
      of: ({ programmeId }) => programmeId,
      moved: (value, programmeId) => ({ ...value, programmeId }),
    },
  }),
  sheets: kind({
    version: 1,
    read: asSheet,
    keyOf: ({ key }) => key,
    merge: (a, b) => newerOf(a, b, ({ changedAt }) => [changedAt]),
  }),
  sent: kind({
    version: 1,
    read: asSent,
    keyOf: ({ id }) => id,
    merge: (a, b) => newerOf(a, b, ({ revision, at }) => [revision, at]),
  }),
};

/** A format with a higher number than can be read. */
const isNewer = (value: unknown, known: number): boolean => {
  const format = typeof value === 'object' && value !== null ? Reflect.get(value, 'format') : '';
  const [, version] = /^towpath-[a-z]+\/(\d+)$/.exec(String(format)) ?? [];
  return version !== undefined && Number(version) > known;
};

/** The records of one store by their keys. */
export type Rows = ReadonlyMap<string, unknown>;

/** One store of a phone with that of a backup taken in. */
export interface MergedStore {
  readonly rows: Rows;
  readonly notTaken: readonly { readonly key: string; readonly why: NotTakenWhy }[];
}

/** What merging one store has to know of the others. */
export interface Around {
  /** Ids of the backup's programmes here. */
  readonly ids: ReadonlyMap<string, string>;
  /** Above 0: more was done lately in a programme on this phone; below 0: on the backup's. */
  readonly order: (programme: string) => number;
}

/** A store of records that have a kind, one record after another. */
export function mergeStore(
  { version, read, keyOf, merge, about }: Kind<unknown>,
  here: readonly Row[],
  given: readonly Row[],
  { ids, order }: Around,
): MergedStore {
  const rows = new Map<string, unknown>(here);
  const notTaken: { key: string; why: NotTakenWhy }[] = [];
  for (const [key, value] of given) {
    const found = read(value);
    if (found === undefined || keyOf(found) !== key) {
      notTaken.push({ key, why: isNewer(value, version) ? 'newer' : 'shape' });
      continue;
    }
    const id = about && ids.get(about.of(found));
    const next = about === undefined || id === undefined ? found : about.moved(found, id);
    const place = keyOf(next);
    if (!rows.has(place)) rows.set(place, next);
    else {
      const raw = rows.get(place);
      // Most of a backup is here already, letter for letter.
      if (JSON.stringify(raw) === JSON.stringify(next)) continue;
      const there = read(raw);
      if (there === undefined) notTaken.push({ key, why: 'unreadable-here' });
      else rows.set(place, merge(there, next, order));
    }
  }
  return { rows, notTaken };
}

/** Groups by programme: where the two differ, that of the phone on which more was done since. */
export function mergeChoices(
  here: readonly Row[],
  given: readonly Row[],
  { ids, order }: Around,
): MergedStore {
  const rows = new Map<string, unknown>(here);
  const notTaken: { key: string; why: NotTakenWhy }[] = [];
  for (const [key, group] of given) {
    const programme = ids.get(key) ?? key;
    if (typeof group !== 'string') notTaken.push({ key, why: 'shape' });
    else if (!rows.has(programme) || order(programme) < 0) rows.set(programme, group);
  }
  return { rows, notTaken };
}

/** What was chosen here stays; the cautions were read on the later of the two days. */
export function mergeSettings(
  here: readonly Row[],
  given: readonly Row[],
  defaults: Readonly<Record<string, unknown>>,
): MergedStore {
  const rows = new Map<string, unknown>(here);
  const notTaken: { key: string; why: NotTakenWhy }[] = [];
  for (const [key, value] of given) {
    if (key !== 'settings' || !isPlainObject(value)) {
      notTaken.push({ key, why: 'shape' });
      continue;
    }
    const ours = (rows.get(key) ?? {}) as Readonly<Record<string, unknown>>;
    const taken = Object.entries(value).filter(([name, theirs]) => {
      const mine = ours[name];
      if (name === 'cautionsReadOn')
        return typeof theirs === 'string' && theirs > String(mine ?? '');
      return mine === undefined || isSame(mine, defaults[name]);
    });
    rows.set(key, { ...ours, ...Object.fromEntries(taken) });
  }
  return { rows, notTaken };
}
