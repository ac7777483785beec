import type { Digests } from '../../domain/board/file-merge.ts';
import { fail } from '../../domain/result.ts';
import type { BoardChange, Boards } from '../board-contract.ts';
import type { BoardDesk, Done } from './desk.ts';

/** Another tab may write between two looks; nobody writes that often. */
const TRIES = 5;

/**
 * A change for which digests are needed. They take time that a transaction does not wait for, so
 * they are made before it, and made anew where others lie there by then.
 *
 * @param keysOf whose, by what lies there; asked with nothing at first
 */
export async function writeWithDigests(
  desk: Pick<BoardDesk, 'digestsOf' | 'write'>,
  keysOf: (here: Boards) => readonly string[],
  job: (here: Boards, digests: Digests) => BoardChange,
): Done {
  let seen: Boards = { heard: [], days: [], setups: [] };
  for (let tries = 0; tries < TRIES; tries++) {
    const digests = await desk.digestsOf(keysOf(seen));
    if (!digests.ok) return digests;
    let isWhole = false;
    const done = await desk.write((here) => {
      seen = here;
      isWhole = keysOf(here).every((key) => digests.value.has(key));
      return isWhole ? job(here, digests.value) : {};
    });
    if (!done.ok || isWhole) return done;
  }
  return fail({ code: 'not-ours', detail: 'people change too fast' });
}
