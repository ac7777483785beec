import { backedUp, type Row, type Stores } from './backup.ts';
import { asEntry, asFollowing, asPerson, asSent, asSheet } from './backup-shapes.ts';
import { compareStamps, isSame } from './merge-fields.ts';
import { mergeProgrammes, type NotTakenWhy, type Vouched } from './merge-programmes.ts';
import { mergeEntries, mergeFollowing, mergePeople, newerOf } from './merge-records.ts';
import { type Side, sideOf } from './restore-side.ts';

/** A record to be written, all of them in one go. */
export interface Change {
  readonly store: string;
  readonly key: string;
  readonly value: unknown;
}

/** A record of a backup that is left out, and why. */
export interface NotTaken {
  readonly store: string;
  readonly key: string;
  readonly why: NotTakenWhy;
}

/** What a restore does to one store, in records. */
export interface StoreReport {
  readonly store: string;
  readonly here: number;
  readonly inFile: number;
  /** New on this phone. */
  readonly added: number;
  /** Here already, and now with more or newer in them. */
  readonly changed: number;
}

/** What a restore comes to. Nothing has been written. */
export interface Restored {
  /** Everything as it is afterwards. */
  readonly stores: Stores;
  readonly changes: readonly Change[];
  readonly report: readonly StoreReport[];
  readonly notTaken: readonly NotTaken[];
}

/** What a restore has to know besides the two sides. */
export interface RestoreWish {
  readonly vouched?: Vouched;
  /** Settings that nobody chose: what the app begins with. */
  readonly defaults?: Readonly<Record<string, unknown>>;
}

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

/** In the order in which they are told. */
const KINDS: Readonly<Record<string, Kind<unknown>>> = {
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

type Rows = ReadonlyMap<string, unknown>;

interface Merged {
  readonly rows: Rows;
  readonly notTaken: readonly Omit<NotTaken, 'store'>[];
}

interface Around {
  /** Ids of the backup's programmes here. */
  readonly ids: ReadonlyMap<string, string>;
  readonly order: (programme: string) => number;
}

function mergeStore(
  { version, read, keyOf, merge, about }: Kind<unknown>,
  here: readonly Row[],
  given: readonly Row[],
  { ids, order }: Around,
): Merged {
  const rows = new Map<string, unknown>(here);
  const notTaken: Omit<NotTaken, 'store'>[] = [];
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
function mergeChoices(here: readonly Row[], given: readonly Row[], { ids, order }: Around): Merged {
  const rows = new Map<string, unknown>(here);
  const notTaken: Omit<NotTaken, 'store'>[] = [];
  for (const [key, group] of given) {
    const programme = ids.get(key) ?? key;
    if (typeof group !== 'string') notTaken.push({ key, why: 'shape' });
    else if (!rows.has(programme) || order(programme) < 0) rows.set(programme, group);
  }
  return { rows, notTaken };
}

/** What was chosen here stays; the cautions were read on the later of the two days. */
function mergeSettings(
  here: readonly Row[],
  given: readonly Row[],
  defaults: Readonly<Record<string, unknown>>,
): Merged {
  const rows = new Map<string, unknown>(here);
  const notTaken: Omit<NotTaken, 'store'>[] = [];
  for (const [key, value] of given) {
    if (key !== 'settings' || typeof value !== 'object' || value === null || Array.isArray(value)) {
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

const listOf = (rows: Rows): readonly Row[] =>
  [...rows].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));

const orderOf =
  (here: Side, given: Side, ids: ReadonlyMap<string, string>) =>
  (programme: string): number => {
    const theirs = [...ids].find(([, id]) => id === programme)?.[0] ?? programme;
    return compareStamps(here(programme), given(theirs));
  };

/**
 * A phone with a backup taken in: everything of both, by id. What is on both sides and differs
 * keeps what is newer, and what only one of them has. Nothing that is here is lost, and nothing
 * that cannot be read is touched or taken. Taken in twice it is as taken in once, and either
 * phone's backup on the other gives the same record of what was done.
 */
export function restore(
  current: Stores,
  file: Stores,
  { vouched = {}, defaults = {} }: RestoreWish = {},
): Restored {
  // What a backup never holds is not taken from one either.
  const given = backedUp(file);
  const of = (stores: Stores, name: string): readonly Row[] =>
    Object.hasOwn(stores, name) ? (stores[name] ?? []) : [];
  const programmes = mergeProgrammes(of(current, 'programmes'), of(given, 'programmes'), vouched);
  const { ids } = programmes;
  const around = { ids, order: orderOf(sideOf(current), sideOf(given), ids) };
  const merged: Record<string, Merged> = {
    programmes,
    choices: mergeChoices(of(current, 'choices'), of(given, 'choices'), around),
    settings: mergeSettings(of(current, 'settings'), of(given, 'settings'), defaults),
    ...Object.fromEntries(
      Object.entries(KINDS).map(([name, each]) => [
        name,
        mergeStore(each, of(current, name), of(given, name), around),
      ]),
    ),
  };
  const known = Object.entries(merged);
  const changes = known.flatMap(([store, { rows }]) => changesOf(store, of(current, store), rows));
  const strange = Object.keys(given).filter((name) => !Object.hasOwn(merged, name));
  return {
    stores: {
      ...current,
      ...Object.fromEntries(
        known
          .filter(([name, { rows }]) => Object.hasOwn(current, name) || rows.size > 0)
          .map(([name, { rows }]) => [name, listOf(rows)]),
      ),
    },
    changes,
    report: known.map(([store, { rows }]) =>
      reportOf(
        store,
        of(current, store),
        of(given, store).length,
        rows,
        changes.filter((change) => change.store === store).length,
      ),
    ),
    notTaken: [
      ...known.flatMap(([store, { notTaken }]) => notTaken.map((each) => ({ store, ...each }))),
      ...strange.flatMap((store) =>
        of(given, store).map(([key]): NotTaken => ({ store, key, why: 'unknown' })),
      ),
    ],
  };
}

function changesOf(store: string, here: readonly Row[], rows: Rows): readonly Change[] {
  const before = new Map(here);
  return listOf(rows)
    .filter(([key, value]) => {
      const was = before.get(key);
      return was !== value && (!before.has(key) || !isSame(was, value));
    })
    .map(([key, value]) => ({ store, key, value }));
}

function reportOf(
  store: string,
  here: readonly Row[],
  inFile: number,
  rows: Rows,
  changes: number,
): StoreReport {
  const added = rows.size - here.length;
  return { store, here: here.length, inFile, added, changed: changes - added };
}
