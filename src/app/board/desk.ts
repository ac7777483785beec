import type { StoreApi } from 'zustand/vanilla';
import { isDue } from '../../domain/board/erase.ts';
import { localDate } from '../../domain/log/local-date.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { readProgramme } from '../../domain/programme/read.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import type {
  BoardChange,
  BoardProblem,
  BoardState,
  BoardStore,
  Boards,
} from '../board-contract.ts';
import type { SettingsState } from '../contract.ts';
import type { ExchangePorts } from '../exchange-ports.ts';
import type { Clock, FileShare, StoreProblem } from '../ports.ts';
import { createMemory, goings, type Memory } from './memory.ts';

/** What the board needs of the app and of the world. */
export interface BoardNeeds {
  readonly ports: Pick<ExchangePorts, 'store' | 'boards' | 'vault' | 'codes' | 'intake'>;
  readonly clock: Clock;
  readonly share: FileShare;
  readonly newId: () => string;
  readonly settings: StoreApi<SettingsState>;
}

/** Done, or why not. */
export type Done = Promise<Result<void, BoardProblem>>;

/** What is kept, and the one way to change it: first in the database, then on the screen. */
export interface BoardDesk {
  readonly memory: Memory;
  now(): number;
  /** The local date, ISO 8601. */
  today(): string;
  /** A change that is computed from what lies there, then shown. */
  write(job: (here: Boards) => BoardChange, of?: Parameters<BoardStore['change']>[1]): Done;
  /** Reads everything, and shows it. */
  read(): Promise<Result<Boards, StoreProblem>>;
  /** What was sent from this device, read anew. */
  readProgrammes(): Promise<Result<readonly Programme[], StoreProblem>>;
  /** Lets go of what is due. @returns ids of the programmes whose people went */
  letGo(): Promise<Result<readonly string[], StoreProblem>>;
  /** Digests of keys, by these keys. */
  digestsOf(
    keys: readonly string[],
  ): Promise<Result<ReadonlyMap<string, string>, { readonly code: 'not-secure' }>>;
}

/** The desk over the phone's database; `state` is the store that it shows on. */
export function createDesk(
  state: () => StoreApi<BoardState>,
  { ports, clock, settings }: BoardNeeds,
): BoardDesk {
  const memory = createMemory();
  const now = (): number => clock.now();
  const today = (): string => localDate(now(), clock.zoneTime(now()).offsetMinutes);

  function show(): void {
    const shown = memory.shown(state().getState().programmes);
    state().setState(shown);
    // Kept where the app sees it that is opened for something else: people go all the same.
    const next = Object.values(shown.goesOn).sort()[0] ?? '';
    const { settings: set, change } = settings.getState();
    if ((set.boardsGoOn ?? '') !== next) void change({ boardsGoOn: next });
  }

  const write: BoardDesk['write'] = async (job, of) => {
    let here: Boards | undefined;
    const done = await ports.boards.change((found) => {
      here = found;
      return job(found);
    }, of);
    if (!done.ok) return done;
    if (here !== undefined) memory.absorb(here, of);
    memory.apply(done.value);
    show();
    return ok(undefined);
  };

  async function letGo(): Promise<Result<readonly string[], StoreProblem>> {
    let went: readonly string[] = [];
    const done = await write((here) => {
      const dates = goings(here, state().getState().programmes);
      went = Object.keys(dates).filter((id) => isDue(dates[id], today()));
      const isGone = ({ programmeId }: { readonly programmeId: string }) =>
        went.includes(programmeId);
      return {
        gone: {
          heard: here.heard.filter(isGone).map(({ key }) => key),
          days: here.days.filter(isGone).map(({ key }) => key),
          setups: here.setups.filter(isGone).map(({ programmeId }) => programmeId),
        },
      };
    });
    return done.ok ? ok(went) : fail(done.error as StoreProblem);
  }

  return {
    memory,
    now,
    today,
    write,
    letGo,
    async read() {
      const read = await ports.boards.boards();
      if (!read.ok) return read;
      memory.absorb(read.value);
      show();
      return read;
    },
    async readProgrammes() {
      const sent = await ports.store.sent();
      if (!sent.ok) return sent;
      const latest = [...sent.value].sort((a, b) => b.at - a.at);
      const read = latest.flatMap(({ text }) => {
        const known = state()
          .getState()
          .programmes.find((each) => each.text === text);
        if (known !== undefined) return known;
        const programme = readProgramme(text);
        return programme.ok ? programme.value : [];
      });
      state().setState({ programmes: read });
      return ok(read);
    },
    async digestsOf(keys) {
      const made = await Promise.all(
        keys.map(async (key) => [key, await ports.vault.digest(key)] as const),
      );
      const digests = new Map<string, string>();
      for (const [key, digest] of made) {
        if (!digest.ok) return fail({ code: digest.error });
        digests.set(key, digest.value);
      }
      return ok(digests);
    },
  };
}
