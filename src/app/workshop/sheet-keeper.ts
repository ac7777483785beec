import { fail, type Result } from '../../domain/result.ts';
import type { SheetStore, StoredSheet } from '../exchange-ports.ts';
import type { Clock, StoreProblem } from '../ports.ts';

const AGAIN_MS = 5000;

/** What is to become of a sheet in the store. Without `sheet` it is to be removed. */
interface Wish {
  readonly key: string;
  readonly sheet?: StoredSheet;
}

/** Keeps the newest state of each sheet. */
export interface SheetKeeper {
  /** Keeps this state of the sheet, as soon as what is being written has been written. */
  put(sheet: StoredSheet): void;
  remove(key: string): void;
  /** This is what the store holds. */
  knows(sheet: StoredSheet): void;
  /** Something of this sheet is not in the store yet. */
  waits(key: string): boolean;
  /** Until everything that is wanted has been tried. */
  tried(): Promise<void>;
}

interface Hears {
  /** A sheet's state came to the store, or did not. */
  told(key: string, problem?: StoreProblem): void;
  /** Another tab has written this sheet since it was read here: ours must go elsewhere. */
  taken(sheet: StoredSheet): void;
}

/**
 * Writes sheets one after another, each at once, of each its newest state only. What could not be
 * written waits for the next change or a few seconds, and nothing else waits for it.
 */
export function createSheetKeeper(
  store: SheetStore,
  clock: Pick<Clock, 'later'>,
  { told, taken }: Hears,
): SheetKeeper {
  const wanted = new Map<string, Wish>();
  const marks = new Map<string, string>();
  let running: Promise<void> | undefined;
  let stopTimer: (() => void) | undefined;

  async function ask({ key, sheet }: Wish): Promise<Result<void, StoreProblem>> {
    try {
      return await (sheet ? store.putSheet(sheet, marks.get(key)) : store.removeSheet(key));
    } catch (error) {
      return fail({ code: 'lost', detail: String(error) });
    }
  }

  /** @returns whether it is settled, or stays wanted */
  async function write(wish: Wish): Promise<boolean> {
    const { key, sheet } = wish;
    const result = await ask(wish);
    const newest = wanted.get(key);
    if (!result.ok && result.error.code === 'not-ours') {
      wanted.delete(key);
      if (newest?.sheet !== undefined) taken(newest.sheet);
      return true;
    }
    if (result.ok) {
      if (sheet !== undefined) marks.set(key, sheet.mark);
      if (newest === wish) wanted.delete(key);
    }
    told(key, result.ok ? undefined : result.error);
    return result.ok;
  }

  async function writeAll(): Promise<void> {
    // A turn later: `running` is known before this can end.
    await undefined;
    stopTimer?.();
    stopTimer = undefined;
    const failed = new Set<Wish>();
    for (;;) {
      const next = [...wanted.values()].find((wish) => !failed.has(wish));
      if (next === undefined) break;
      if (!(await write(next))) failed.add(next);
    }
    if (wanted.size > 0) stopTimer = clock.later(AGAIN_MS, () => void start());
    running = undefined;
  }

  function start(): Promise<void> {
    running ??= writeAll();
    return running;
  }

  const want = (wish: Wish): void => {
    wanted.set(wish.key, wish);
    void start();
  };

  return {
    put: (sheet) => want({ key: sheet.key, sheet }),
    remove: (key) => want({ key }),
    knows: ({ key, mark }) => void marks.set(key, mark),
    waits: (key) => wanted.has(key),
    tried: () => running ?? Promise.resolve(),
  };
}
