import type { SheetStore } from '../../../src/app/exchange-ports.ts';
import { createWorkshop } from '../../../src/app/workshop/workshop.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { HandClock } from '../clock.ts';
import { MemorySheets } from './memory-sheets.ts';

let ids = 0;
export const nextId = (): string => `id${String(++ids).padStart(6, '0')}`;

/** The real workshop over whatever store is given. */
export const workshopOver = (store: SheetStore, clock = new HandClock()) =>
  createWorkshop({ store, clock, newId: nextId });

/** A workshop as screens see it: in memory, with these sheets kept already, keys `sheet-1` and on. */
export function fakeWorkshop(sheets: readonly Sheet[]) {
  const store = new MemorySheets();
  const clock = new HandClock();
  for (const [n, sheet] of sheets.entries()) {
    const key = `sheet-${n + 1}`;
    const changedAt = clock.now() - n * 60_000;
    store.there.set(key, {
      format: 'towpath-sheet/1',
      key,
      sheet,
      changedAt,
      tab: 'before',
      mark: 'm',
    });
  }
  return workshopOver(store, clock);
}
