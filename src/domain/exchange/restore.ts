import { backedUp, type Row, type Stores } from './backup.ts';
import { compareStamps, isSame } from './merge-fields.ts';
import { mergeProgrammes, type NotTakenWhy, type Vouched } from './merge-programmes.ts';
import { type Side, sideOf } from './restore-side.ts';
import {
  KINDS,
  type MergedStore,
  mergeChoices,
  mergeSettings,
  mergeStore,
  type Rows,
} from './restore-stores.ts';

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
  const merged: Record<string, MergedStore> = {
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
