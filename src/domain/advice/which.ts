import type { Stage } from './next-session.ts';
import type { Now } from './now.ts';

/** A programme that is followed, and how it stands. */
export interface Followed {
  readonly programmeId: string;
  readonly now: Now;
}

const ORDER: readonly Stage[] = ['under-way', 'late', 'before', 'paused', 'through'];

/**
 * Which of several programmes: those that have a next session today first, in the order given;
 * `ask` when more than one of them is open today.
 */
export function whichOf<T extends Followed>(
  list: readonly T[],
): { readonly ask: boolean; readonly order: readonly T[] } {
  const order = [...list].sort((a, b) => ORDER.indexOf(a.now.stage) - ORDER.indexOf(b.now.stage));
  const open = list.filter(({ now }) => now.stage === 'under-way' || now.stage === 'late');
  return { ask: open.length > 1, order };
}
