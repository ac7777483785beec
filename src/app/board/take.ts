import { keysOf, takeIn } from '../../domain/board/take.ts';
import type { Response } from '../../domain/exchange/response.ts';
import type { BoardDesk } from './desk.ts';
import type { BringInNeeds } from './intake.ts';

/** Takes answers in as one change each time, computed from what lies there. */
export const takeWith =
  (desk: BoardDesk, programmes: () => readonly { readonly id: string }[]): BringInNeeds['take'] =>
  async (responses: readonly Response[]) => {
    const keys = keysOf(responses);
    const digests = await desk.digestsOf(keys);
    if (!digests.ok) return 'store';
    const ids = new Set(programmes().map(({ id }) => id));
    const terms = {
      now: desk.now(),
      programmes: ids,
      people: desk.memory.people(),
      digests: digests.value,
    };
    let taken: ReturnType<typeof takeIn> | undefined;
    const done = await desk.write(
      (here) => {
        taken = takeIn(here, responses, terms);
        return { heard: taken.heard };
      },
      { heard: keys, days: [] },
    );
    return done.ok && taken !== undefined ? taken.outcomes : 'store';
  };
