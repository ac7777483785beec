import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { createBoard } from '../../../src/app/board/board.ts';
import type { BoardState, Intake } from '../../../src/app/board-contract.ts';
import type { SettingsState } from '../../../src/app/contract.ts';
import type { ExchangePorts } from '../../../src/app/exchange-ports.ts';
import { DEFAULT_SETTINGS } from '../../../src/app/settings.ts';
import type { Response } from '../../../src/domain/exchange/response.ts';
import { ok } from '../../../src/domain/result.ts';
import { createExchangePorts } from '../../../src/platform/exchange.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { HandClock } from '../clock.ts';
import { marshProgramme } from '../exchange/programmes.ts';

let databases = 0;

/** A leader's device over a real database: its board, the files it gave out, and its storage. */
export interface LeaderBoard {
  readonly board: StoreApi<BoardState>;
  readonly ports: ExchangePorts;
  readonly clock: HandClock;
  readonly settings: StoreApi<SettingsState>;
  readonly database: string;
  /** Name and content, in the order in which they were given out. */
  readonly files: [name: string, content: string][];
  /** Takes answers in as if they had been opened. */
  hear(...responses: readonly Response[]): Promise<void>;
  /** Every record of every store, as text. */
  dump(): Promise<string>;
}

export interface BoardOptions {
  readonly database?: string;
  readonly clock?: HandClock;
  /** What was sent from this device; left out: six weeks of the Heron Loop. */
  readonly programmes?: readonly object[];
}

export async function openLeaderBoard(options: BoardOptions = {}): Promise<LeaderBoard> {
  const database = options.database ?? `board-${++databases}`;
  const clock = options.clock ?? new HandClock();
  const files: [string, string][] = [];
  let answers: readonly Response[] = [];
  const intake: Intake = {
    async open(_, take) {
      const from = answers.map(() => '');
      await take({ share: 1, responses: answers, from, left: [], found: answers.length });
      return ok(undefined);
    },
  };
  const ports = { ...createExchangePorts(connect(database)), intake };
  for (const programme of options.programmes ?? [marshProgramme(4)]) {
    const { id, revision } = programme as { readonly id: string; readonly revision: number };
    const sent = { id, revision, text: JSON.stringify(programme), signature: '', at: clock.now() };
    await ports.store.putSent(sent);
  }
  const settings: StoreApi<SettingsState> = createStore<SettingsState>((set, get) => ({
    settings: DEFAULT_SETTINGS,
    change: async (part) => set({ settings: { ...get().settings, ...part } }),
  }));
  const board = createBoard({
    ports,
    clock,
    settings,
    newId: () => crypto.randomUUID(),
    share: { give: async (name, _, content) => void files.push([name, String(content)]) },
  });
  await board.getState().load();
  return {
    board,
    ports,
    clock,
    settings,
    database,
    files,
    async hear(...responses) {
      answers = responses;
      await board.getState().bringIn([{ name: '', content: '' }]);
    },
    async dump() {
      const db = await openDB(database);
      const names = [...db.objectStoreNames];
      const all = await Promise.all(
        names.map(async (name) => [name, await db.getAllKeys(name), await db.getAll(name)]),
      );
      db.close();
      return JSON.stringify(all);
    },
  };
}
