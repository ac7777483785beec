import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Programme } from '../domain/programme/programme.ts';
import type { ProgrammesState } from './contract.ts';
import type { Store, Stored } from './ports.ts';
import type { Queue } from './queue.ts';

const reader = () => import('./programme-reader.ts');

/** The programmes of this phone, and the group that the person chose in each. */
export function createProgrammes(store: Store, queue: Queue): StoreApi<ProgrammesState> {
  return createStore<ProgrammesState>((set, get) => ({
    ready: false,
    programmes: [],
    chosen: {},
    async chooseGroup(programmeId, groupId) {
      set({ chosen: { ...get().chosen, [programmeId]: groupId } });
      queue.push(() => store.putChoice(programmeId, groupId));
    },
  }));
}

/** Reads the demo while the phone still opens what is stored. A failure is told by who needs it. */
export const readAhead = (): Promise<unknown> =>
  reader().then(
    ({ demoProgramme }) => demoProgramme(),
    () => undefined,
  );

/** What was stored, and the demo where nothing of the same id is. */
export async function showStored(
  programmes: StoreApi<ProgrammesState>,
  stored: Pick<Stored, 'programmes' | 'choices'>,
): Promise<void> {
  const { readProgramme, demoProgramme } = await reader();
  const opened = programmes.getState().programmes;
  const kept = [...stored.programmes].sort((a, b) => a.cameAt - b.cameAt);
  const read = kept.flatMap(({ text, id }) => {
    const result = readProgramme(text);
    // Two of the same name are kept apart under ids of the phone's own.
    return result.ok ? [{ ...result.value, id }] : [];
  });
  const all = [...demoProgramme(), ...read, ...opened].reduce<readonly Programme[]>(
    (list, programme) => [...without(list, programme.id), programme],
    [],
  );
  const chosen = { ...stored.choices, ...programmes.getState().chosen };
  programmes.setState({ ready: true, programmes: all, chosen });
}

const without = (list: readonly Programme[], id: string): readonly Programme[] =>
  list.filter((programme) => programme.id !== id);
