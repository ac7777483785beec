import { createStore, type StoreApi } from 'zustand/vanilla';
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
import type { Ports, StoreProblem } from '../ports.ts';
import type { OpenSheet, WorkshopState } from '../workshop-contract.ts';
import { createReader } from './readings.ts';
import { createShelf, type WorkshopNeeds } from './shelf.ts';

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

/** Programmes in writing: kept as they change, each change with its way back. */
export function createWorkshop(needs: WorkshopNeeds): StoreApi<WorkshopState> {
  const { clock, newId } = needs;
  const reader = createReader();
  let desk: Desk | undefined;
  let trouble: StoreProblem | undefined;
  let loading: Promise<void> | undefined;
  let stopAgain: (() => void) | undefined;

  const shelf = createShelf(needs, {
    told: () => show(),
    replaced({ key, sheet }) {
      if (desk?.key === key) desk = { ...desk, history: begin(sheet) };
    },
    movedApart(from, { key, sheet }) {
      if (desk?.key === from)
        desk = { ...desk, key, wasKey: from, history: { ...desk.history, present: sheet } };
      show();
      void load();
    },
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
      saved: !shelf.waits(key),
      ...shelf.troubleOf(key),
      ...(wasKey === undefined ? {} : { wasKey }),
    };
  }

  /** Keys that have no value now are left out: one that is there and undefined is another thing. */
  function show({ ready }: { readonly ready?: true } = {}): void {
    const { open: _open, problem: _problem, ...rest } = workshop.getState();
    const open = opened();
    workshop.setState(
      {
        ...rest,
        ...(ready ? { ready } : {}),
        ...(trouble === undefined ? {} : { problem: trouble }),
        ...(open === undefined ? {} : { open }),
        shelf: shelf.items(),
      },
      true,
    );
  }

  async function read(): Promise<void> {
    stopAgain?.();
    trouble = await shelf.read((key) => desk?.key === key);
    if (trouble === undefined) return show({ ready: true });
    stopAgain = clock.later(LOAD_AGAIN_MS, () => void load());
    show();
  }

  function load(): Promise<void> {
    loading ??= read().finally(() => {
      loading = undefined;
    });
    return loading;
  }

  function lay(key: string): void {
    const stored = shelf.get(key);
    if (stored !== undefined && desk?.key !== key)
      desk = { key, history: begin(stored.sheet), touchedAt: clock.now() };
    show();
  }

  /** The history of the open sheet went on; what came out is kept. */
  function turn(history: History): void {
    if (desk === undefined || history === desk.history) return;
    const isOther = history.present !== desk.history.present;
    desk = { ...desk, history, touchedAt: clock.now() };
    if (isOther) shelf.keep(history.present, desk.key);
    show();
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

  async function create(sheet: Sheet): Promise<string> {
    const key = shelf.keep(sheet);
    lay(key);
    await shelf.tried();
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
      const same = shelf.find((kept) => fileOf(kept) === file);
      if (same === undefined) return ok(await create(sheet.value));
      lay(same.key);
      return ok(same.key);
    },
    async copy(key, title) {
      const stored = shelf.get(key);
      if (stored === undefined) return undefined;
      const named = [...inOneLine(title)].slice(0, LIMITS.title).join('');
      const id = programmeId(named, newId());
      const made = shelf.keep({ ...stored.sheet, id, title: named });
      show();
      await shelf.tried();
      return made;
    },
    openSheet(key) {
      if (shelf.get(key) === undefined) return false;
      if (desk?.key !== key) void load();
      lay(key);
      return true;
    },
    edit,
    undo: () => desk && turn(undo(desk.history)),
    redo: () => desk && turn(redo(desk.history)),
    async remove(key) {
      shelf.remove(key);
      if (desk?.key === key) desk = undefined;
      show();
      await shelf.tried();
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
