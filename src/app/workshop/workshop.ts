import { createStore, type StoreApi } from 'zustand/vanilla';
import { apartTitle } from '../../copy/workshop-store.ts';
import { readProgramme } from '../../domain/programme/read.ts';
import { LIMITS } from '../../domain/programme/shape.ts';
import { fail, ok } from '../../domain/result.ts';
import { tryEdit } from '../../domain/workshop/apply-edit.ts';
import type { Edit } from '../../domain/workshop/edit.ts';
import { fileOf, sheetOf } from '../../domain/workshop/file.ts';
import { begin, type History, pause, record, redo, undo } from '../../domain/workshop/history.ts';
import { programmeId } from '../../domain/workshop/ids.ts';
import { inOneLine } from '../../domain/workshop/one-line.ts';
import type { EditRefusal } from '../../domain/workshop/refusal.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import type { SheetStore, StoredSheet } from '../exchange-ports.ts';
import type { Clock, Ports, StoreProblem } from '../ports.ts';
import type { OpenSheet, WorkshopState } from '../workshop-contract.ts';
import { createKeeper } from './keeper.ts';
import { createReader } from './readings.ts';

export interface WorkshopNeeds {
  readonly store: SheetStore;
  readonly clock: Pick<Clock, 'now' | 'later'>;
  readonly newId: () => string;
}

/** Typing that rests this long is a step of its own. */
const PAUSE_MS = 3000;
const LOAD_AGAIN_MS = 5000;

/** The sheet that is open, and what happened to it here. */
interface Desk {
  readonly key: string;
  readonly history: History;
  readonly touchedAt: number;
  readonly wasKey?: string;
}

const newestFirst = (a: StoredSheet, b: StoredSheet): number =>
  b.changedAt - a.changedAt || (a.key < b.key ? -1 : 1);

/** Programmes in writing: kept as they change, each change with its way back. */
export function createWorkshop({ store, clock, newId }: WorkshopNeeds): StoreApi<WorkshopState> {
  const tab = newId();
  const reader = createReader();
  /** What is on this phone, with what is about to be. */
  const sheets = new Map<string, StoredSheet>();
  const troubles = new Map<string, StoreProblem>();
  let desk: Desk | undefined;
  let loading: Promise<void> | undefined;
  let stopAgain: (() => void) | undefined;

  const keeper = createKeeper(store, clock, {
    told(key, problem) {
      if (problem === undefined) troubles.delete(key);
      else troubles.set(key, problem);
      showAll();
    },
    taken: keepApart,
  });

  const troubleOf = (key: string): { problem?: StoreProblem } => {
    const problem = troubles.get(key);
    return problem === undefined ? {} : { problem };
  };

  const shelf = (): Pick<WorkshopState, 'shelf'> => ({
    shelf: [...sheets.values()]
      .sort(newestFirst)
      .map(({ key, sheet, changedAt }) => ({ key, sheet, changedAt, ...troubleOf(key) })),
  });

  function opened(): OpenSheet | undefined {
    if (desk === undefined) return undefined;
    const { key, history, wasKey } = desk;
    return {
      key,
      sheet: history.present,
      ...reader.read(history.present),
      canUndo: history.past.length > 0,
      canRedo: history.future.length > 0,
      saved: !keeper.waits(key),
      ...troubleOf(key),
      ...(wasKey === undefined ? {} : { wasKey }),
    };
  }

  /** Without `open` when nothing is: a key that is there and undefined is another thing. */
  function show(more: Partial<WorkshopState> = {}): void {
    const { open: _before, ...rest } = workshop.getState();
    const open = opened();
    workshop.setState({ ...rest, ...more, ...(open === undefined ? {} : { open }) }, true);
  }
  const showOpen = (): void => show();
  const showAll = (more: Partial<WorkshopState> = {}): void => show({ ...shelf(), ...more });

  function keep(key: string, sheet: Sheet): void {
    const stored: StoredSheet = {
      format: 'towpath-sheet/1',
      key,
      sheet,
      changedAt: clock.now(),
      tab,
      mark: newId(),
    };
    sheets.set(key, stored);
    keeper.put(stored);
  }

  /** Another tab has written the sheet too. Theirs stays where it is, ours gets a place of its own. */
  function keepApart(ours: StoredSheet): void {
    const key = newId();
    const title = titleApart(ours.sheet.title);
    if (desk?.key === ours.key) {
      const history = { ...desk.history, present: { ...desk.history.present, title } };
      desk = { ...desk, key, history, wasKey: ours.key };
    }
    sheets.delete(ours.key);
    keep(key, { ...ours.sheet, title });
    showAll();
    void load();
  }

  function titleApart(title: string): string {
    const titles = new Set([...sheets.values()].map(({ sheet }) => sheet.title));
    for (let n = 1; ; n += 1) {
      const apart = apartTitle(title, n);
      if (!titles.has(apart)) return [...apart].length <= LIMITS.title ? apart : title;
    }
  }

  function put(sheet: Sheet): string {
    const key = newId();
    keep(key, sheet);
    return key;
  }

  function lay(key: string): void {
    const stored = sheets.get(key);
    if (stored === undefined || desk?.key === key) return;
    desk = { key, history: begin(stored.sheet), touchedAt: clock.now() };
  }

  /** The history of the open sheet went on; what came out is kept. */
  function turn(history: History): void {
    if (desk === undefined || history === desk.history) return;
    const isOther = history.present !== desk.history.present;
    desk = { ...desk, history, touchedAt: clock.now() };
    if (isOther) keep(desk.key, history.present);
    showAll();
  }

  function edit(wish: Edit): EditRefusal | undefined {
    if (desk === undefined) return undefined;
    const rested = clock.now() - desk.touchedAt >= PAUSE_MS;
    const history = rested ? pause(desk.history) : desk.history;
    const next = tryEdit(history.present, wish);
    if (!next.ok) return next.error;
    turn(record(history, wish, next.value));
    return undefined;
  }

  /** What another tab wrote is taken in. */
  function takeIn(stored: StoredSheet): void {
    const before = sheets.get(stored.key);
    keeper.knows(stored);
    sheets.set(stored.key, stored);
    if (desk?.key === stored.key && before?.mark !== stored.mark)
      desk = { ...desk, history: begin(stored.sheet) };
  }

  async function read(): Promise<void> {
    stopAgain?.();
    const atFirst = new Map(sheets);
    const found = await store
      .sheets()
      .catch((error) => fail<StoreProblem>({ code: 'lost', detail: String(error) }));
    if (!found.ok) {
      showAll({ problem: found.error });
      stopAgain = clock.later(LOAD_AGAIN_MS, () => void load());
      return;
    }
    // What changed here meanwhile, or waits to be written, is newer than what was read.
    const isOurs = (key: string): boolean =>
      keeper.waits(key) || sheets.get(key) !== atFirst.get(key);
    const there = new Set(found.value.map(({ key }) => key));
    for (const key of atFirst.keys()) {
      // Removed in another tab; one that is open here stays, and is kept with its next change.
      if (!there.has(key) && !isOurs(key) && desk?.key !== key) sheets.delete(key);
    }
    for (const stored of found.value) if (!isOurs(stored.key)) takeIn(stored);
    const { problem: _gone, ...rest } = workshop.getState();
    workshop.setState(rest, true);
    showAll({ ready: true });
  }

  function load(): Promise<void> {
    loading ??= read().finally(() => {
      loading = undefined;
    });
    return loading;
  }

  async function create(sheet: Sheet): Promise<string> {
    const key = put(sheet);
    lay(key);
    showAll();
    await keeper.tried();
    return key;
  }

  const workshop: StoreApi<WorkshopState> = createStore<WorkshopState>(() => ({
    ready: false,
    shelf: [],
    load,
    newProgrammeId: (title) => programmeId(title, newId()),
    create,
    async createFromFile(text) {
      const sheet = sheetOf(text);
      if (!sheet.ok) return sheet;
      const file = fileOf(sheet.value);
      const same = [...sheets.values()].find((kept) => fileOf(kept.sheet) === file);
      if (same === undefined) return ok(await create(sheet.value));
      lay(same.key);
      showOpen();
      return ok(same.key);
    },
    async copy(key, title) {
      const stored = sheets.get(key);
      if (stored === undefined) return undefined;
      const named = [...inOneLine(title)].slice(0, LIMITS.title).join('');
      const made = put({ ...stored.sheet, id: programmeId(named, newId()), title: named });
      showAll();
      await keeper.tried();
      return made;
    },
    openSheet(key) {
      if (!sheets.has(key)) return false;
      if (desk?.key !== key) void load();
      lay(key);
      showOpen();
      return true;
    },
    edit,
    undo: () => desk && turn(undo(desk.history)),
    redo: () => desk && turn(redo(desk.history)),
    async remove(key) {
      sheets.delete(key);
      if (desk?.key === key) desk = undefined;
      keeper.remove(key);
      showAll();
      await keeper.tried();
    },
    file: () =>
      desk === undefined
        ? fail([{ code: 'file-empty', path: '' }])
        : readProgramme(fileOf(desk.history.present)),
  }));
  return workshop;
}

/** The workshop over the app's ports. */
export async function openWorkshop(
  ports: Pick<Ports, 'exchange' | 'clock' | 'newId'>,
): Promise<StoreApi<WorkshopState>> {
  const { sheets } = await ports.exchange();
  return createWorkshop({ store: sheets, clock: ports.clock, newId: ports.newId });
}
