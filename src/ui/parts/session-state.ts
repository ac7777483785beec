import type { PlayerState } from '../../app/contract.ts';

/** True from the first sound to the end, holds and trouble included. */
export const isUnderWay = (state: PlayerState): boolean =>
  state === 'running' || state === 'holding' || state === 'interrupted' || state === 'stalled';

export const isOver = (state: PlayerState): boolean =>
  state === 'finished' || state === 'ended-early';
