import type { App } from './contract.ts';
import { once } from './once.ts';
import type { Ports } from './ports.ts';
import type { RecordsNeeds } from './records.ts';

/** What is opened when it is first asked for, each a piece of its own. */
export type LaterParts = Pick<App, 'records' | 'workshop' | 'telling' | 'board'>;

/** What these parts need of the app's first ones, and of the world. */
export type LaterNeeds = Ports & Omit<RecordsNeeds, keyof Ports>;

/** The openers of what no first page needs. A failed try does not spoil the next one. */
export const laterParts = (needs: LaterNeeds): LaterParts => ({
  records: once(async () => (await import('./records.ts')).openRecords(needs)),
  workshop: once(async () => (await import('./workshop/workshop.ts')).openWorkshop(needs)),
  telling: once(async () => (await import('./tell.ts')).openTelling(needs)),
  board: once(async () => (await import('./board/board.ts')).openBoard(needs)),
});
