import type { PlayerState } from '../../app/session-contract.ts';

/** Gone through or ended early: nothing more is heard. */
export const isOver = (state: PlayerState): boolean =>
  state === 'finished' || state === 'ended-early';

/** True from the tap to the end: a wait for the start, holds and trouble included. */
export const isUnderWay = (state: PlayerState): boolean =>
  !isOver(state) && !['idle', 'composing', 'ready', 'left'].includes(state);

/** A start that was agreed ahead is waited for, heard or in silence. */
export const isWaiting = (state: PlayerState): boolean =>
  state === 'waiting' || state === 'waiting-silent';
