import { apartTitle } from '../../copy/workshop-store.ts';
import { LIMITS } from '../../domain/programme/shape.ts';
import { fail } from '../../domain/result.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import type { SheetStore, StoredSheet } from '../exchange-ports.ts';
import type { Clock, StoreProblem } from '../ports.ts';
import type { ShelfItem } from '../workshop-contract.ts';
import { createSheetKeeper } from './sheet-keeper.ts';

/** What writing needs of the app and of the world. */
export interface WorkshopNeeds {
  readonly store: SheetStore;
  readonly clock: Pick<Clock, 'now' | 'later'>;
  readonly newId: () => string;
}

/** What happens to sheets without being asked for. */
interface Hears {
  /** Something came to the store, or did not. */
  told(): void;
  /** Another tab's state of a sheet was taken in. */
  replaced(sheet: StoredSheet): void;
  /** Another tab had written this sheet too: ours now lies under a key and a title of its own. */
  movedApart(from: string, to: StoredSheet): void;
}

/** The sheets of this phone. */
export interface Shelf {
  get(key: string): StoredSheet | undefined;
  find(matches: (sheet: Sheet) => boolean): StoredSheet | undefined;
  /** Newest change first. */
  items(): readonly ShelfItem[];
  /** A state of a sheet, kept at once; without a key, a new sheet. @returns its key */
  keep(sheet: Sheet, key?: string): string;
  remove(key: string): void;
  /** Reads what is there. One that is open is not put away, wherever it was removed. */
  read(isOpen: (key: string) => boolean): Promise<StoreProblem | undefined>;
  /** Something of this sheet is not in the store yet. */
  waits(key: string): boolean;
  /** Why the last try to keep a sheet failed, as a screen is told. */
  troubleOf(key: string): { readonly problem?: StoreProblem };
  /** Until everything that waits has been tried. */
  tried(): Promise<void>;
}

const newestFirst = (a: StoredSheet, b: StoredSheet): number =>
  b.changedAt - a.changedAt || (a.key < b.key ? -1 : 1);

/** The sheets of this phone, with those that are about to be on it. */
export function createShelf({ store, clock, newId }: WorkshopNeeds, hears: Hears): Shelf {
  const tab = newId();
  const sheets = new Map<string, StoredSheet>();
  const troubles = new Map<string, StoreProblem>();

  const keeper = createSheetKeeper(store, clock, {
    told(key, problem) {
      if (problem === undefined) troubles.delete(key);
      else troubles.set(key, problem);
      hears.told();
    },
    taken(ours) {
      const title = titleApart(ours.sheet.title);
      sheets.delete(ours.key);
      const key = keep({ ...ours.sheet, title });
      hears.movedApart(ours.key, sheets.get(key) ?? ours);
    },
  });

  function keep(sheet: Sheet, key = newId()): string {
    const changedAt = clock.now();
    const stored: StoredSheet = {
      format: 'towpath-sheet/1',
      key,
      sheet,
      changedAt,
      tab,
      mark: newId(),
    };
    sheets.set(key, stored);
    keeper.put(stored);
    return key;
  }

  function titleApart(title: string): string {
    const titles = new Set([...sheets.values()].map(({ sheet }) => sheet.title));
    for (let n = 1; ; n += 1) {
      const apart = apartTitle(title, n);
      if (!titles.has(apart)) return [...apart].length <= LIMITS.title ? apart : title;
    }
  }

  function takeIn(stored: StoredSheet): void {
    const isOther = sheets.get(stored.key)?.mark !== stored.mark;
    keeper.knows(stored);
    sheets.set(stored.key, stored);
    if (isOther) hears.replaced(stored);
  }

  async function read(isOpen: (key: string) => boolean): Promise<StoreProblem | undefined> {
    const atFirst = new Map(sheets);
    const found = await store
      .sheets()
      .catch((error) => fail<StoreProblem>({ code: 'lost', detail: String(error) }));
    if (!found.ok) return found.error;
    // What changed here meanwhile, or waits to be written, is newer than what was read.
    const isOurs = (key: string): boolean =>
      keeper.waits(key) || sheets.get(key) !== atFirst.get(key);
    const there = new Set(found.value.map(({ key }) => key));
    for (const key of atFirst.keys()) {
      // Removed in another tab; one that is open here stays, and is kept with its next change.
      if (!there.has(key) && !isOurs(key) && !isOpen(key)) sheets.delete(key);
    }
    for (const stored of found.value) if (!isOurs(stored.key)) takeIn(stored);
    return undefined;
  }

  const troubleOf: Shelf['troubleOf'] = (key) => {
    const problem = troubles.get(key);
    return problem === undefined ? {} : { problem };
  };

  return {
    get: (key) => sheets.get(key),
    find: (matches) => [...sheets.values()].find(({ sheet }) => matches(sheet)),
    items: () =>
      [...sheets.values()]
        .sort(newestFirst)
        .map(({ key, sheet, changedAt }) => ({ key, sheet, changedAt, ...troubleOf(key) })),
    keep,
    remove(key) {
      sheets.delete(key);
      keeper.remove(key);
    },
    read,
    waits: keeper.waits,
    troubleOf,
    tried: keeper.tried,
  };
}
