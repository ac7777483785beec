import type { App } from './contract.ts';
import { once } from './once.ts';
import type { Ports } from './ports.ts';
import type { RecordsNeeds } from './records.ts';

/** What is opened when it is first asked for, each a piece of its own. */
export interface LaterParts extends Pick<App, 'records' | 'workshop' | 'telling' | 'board'> {
  /** Lets go of what others told, where its time is over, once the first page stands. */
  letGo(): Promise<void>;
}

/** What these parts need of the app's first ones, and of the world. */
export type LaterNeeds = Ports & Omit<RecordsNeeds, keyof Ports>;

/** By then the first page stands, and nobody waits for what is read behind it. */
const LET_GO_MS = 5000;

/** The openers of what no first page needs. A failed try does not spoil the next one. */
export function laterParts(needs: LaterNeeds): LaterParts {
  const board = once(async () => (await import('./board/board.ts')).openBoard(needs));
  return {
    records: once(async () => (await import('./records.ts')).openRecords(needs)),
    workshop: once(async () => (await import('./workshop/workshop.ts')).openWorkshop(needs)),
    telling: once(async () => (await import('./tell.ts')).openTelling(needs)),
    board,
    letGo: () =>
      new Promise((done) => {
        const go = async (): Promise<void> => (await board()).getState().load();
        // Where the board cannot be fetched it goes at the next visit.
        needs.clock.later(LET_GO_MS, () => void go().then(done, done));
      }),
  };
}
