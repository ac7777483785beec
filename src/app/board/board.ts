import type { StoreApi } from 'zustand/vanilla';
import type { BoardState } from '../board-contract.ts';
import type { Ports } from '../ports.ts';

/** The board over the app's ports. */
export async function openBoard(
  _ports: Pick<Ports, 'exchange' | 'clock' | 'share' | 'newId'>,
): Promise<StoreApi<BoardState>> {
  throw new Error('not written yet');
}
