import { createStore, type StoreApi } from 'zustand/vanilla';
import { isDue } from '../../domain/board/erase.ts';
import type { BoardState } from '../board-contract.ts';
import type { Ports, StoreProblem } from '../ports.ts';
import type { SettingsHolder } from '../settings.ts';
import { type BoardNeeds, createDesk } from './desk.ts';
import { createBringIn } from './intake.ts';
import { createSaving } from './saving.ts';
import { scanWith } from './scanning.ts';
import { takeWith } from './take.ts';
import { createWriting } from './writing.ts';

const LOAD_AGAIN_MS = 5000;

/** What came back to a leader: read, brought in, written, saved, forgotten. */
export function createBoard(needs: BoardNeeds): StoreApi<BoardState> {
  const { ports, clock } = needs;
  const desk = createDesk(() => board, needs);
  const writing = createWriting(desk, needs.newId);
  const saving = createSaving(desk, needs, () => board.getState());
  const intake = createBringIn({
    intake: ports.intake,
    take: takeWith(desk, () => board.getState().programmes),
    show: (view) => board.setState({ intake: view }),
  });
  let loading: Promise<void> | undefined;
  let stopAgain: (() => void) | undefined;

  async function read(): Promise<StoreProblem | undefined> {
    const sent = await desk.readProgrammes();
    if (!sent.ok) return sent.error;
    const kept = await desk.read();
    if (!kept.ok) return kept.error;
    const { goesOn, went } = board.getState();
    if (!Object.values(goesOn).some((date) => isDue(date, desk.today()))) return undefined;
    const gone = await desk.letGo();
    if (!gone.ok) return gone.error;
    board.setState({ went: [...new Set([...went, ...gone.value])] });
    return undefined;
  }

  async function load(): Promise<void> {
    stopAgain?.();
    const problem = await read();
    const { problem: _problem, ...rest } = board.getState();
    if (problem === undefined) return board.setState({ ...rest, ready: true }, true);
    stopAgain = clock.later(LOAD_AGAIN_MS, () => void board.getState().load());
    board.setState({ problem });
  }

  const board: StoreApi<BoardState> = createStore<BoardState>(() => ({
    ready: false,
    programmes: [],
    heard: {},
    days: {},
    setups: {},
    goesOn: {},
    went: [],
    intake: { name: 'nothing' },
    load() {
      loading ??= load().finally(() => {
        loading = undefined;
      });
      return loading;
    },
    async bringIn(sources) {
      // What was sent since is a programme whose answers may come.
      await desk.readProgrammes();
      await intake.bringIn(sources);
    },
    cancelIntake: intake.cancel,
    dismissIntake: () => board.setState({ intake: { name: 'nothing' } }),
    scan: (video) => scanWith(ports.codes, video, board.getState().bringIn),
    ...writing,
    ...saving,
  }));
  return board;
}

/** The board over the app's ports. */
export async function openBoard(
  needs: Pick<Ports, 'exchange' | 'clock' | 'share' | 'newId'> & {
    readonly settings: Pick<SettingsHolder, 'store'>;
  },
): Promise<StoreApi<BoardState>> {
  const ports = await needs.exchange();
  return createBoard({ ...needs, ports, settings: needs.settings.store });
}
