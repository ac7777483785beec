import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Programme } from '../domain/programme/programme.ts';
import type { ProgrammesState } from './contract.ts';
import { DEMO } from './demo/read.ts';
import type { Store, Stored } from './ports.ts';
import type { Queue } from './queue.ts';

/** The programmes of this phone, and the group that the person chose in each. */
export function createProgrammes(store: Store, queue: Queue): StoreApi<ProgrammesState> {
  return createStore<ProgrammesState>((set, get) => ({
    ready: false,
    programmes: [],
    chosen: {},
    async chooseGroup(programmeId, groupId) {
      set({ chosen: { ...get().chosen, [programmeId]: groupId } });
      await queue.push(() => store.putChoice(programmeId, groupId));
    },
  }));
}

/** What was stored, and the demo where nothing of the same id is. */
export async function showStored(
  programmes: StoreApi<ProgrammesState>,
  stored: Pick<Stored, 'programmes' | 'choices'>,
): Promise<void> {
  const read = stored.programmes.length === 0 ? [] : await readAll(stored.programmes);
  // Those that came while it was read; the demo is not one of them.
  const opened = programmes.getState().programmes.filter((each) => each !== DEMO);
  const all = [DEMO, ...read, ...opened].reduce<readonly Programme[]>(
    (list, programme) => [...without(list, programme.id), programme],
    [],
  );
  const chosen = { ...stored.choices, ...programmes.getState().chosen };
  programmes.setState({ ready: true, programmes: all, chosen });
}

/** In the order in which they came. The reader is a piece of its own: a new phone does without. */
async function readAll(stored: Stored['programmes']): Promise<readonly Programme[]> {
  const { readProgramme } = await import('../domain/programme/read.ts');
  const kept = [...stored].sort((a, b) => a.cameAt - b.cameAt);
  return kept.flatMap(({ text, id }) => {
    const result = readProgramme(text);
    // Two of the same name are kept apart under ids of the phone's own.
    return result.ok ? [{ ...result.value, id }] : [];
  });
}

const without = (list: readonly Programme[], id: string): readonly Programme[] =>
  list.filter((programme) => programme.id !== id);
