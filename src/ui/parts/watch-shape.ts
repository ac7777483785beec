/** What the whole screen shows to someone who watches. Pure. */
import type { SessionView } from '../../app/session-contract.ts';

/** A number counted down, a change and which way it goes, or the plain picture of the step. */
export type WatchShape =
  | { readonly name: 'count'; readonly n: 1 | 2 | 3 }
  | { readonly name: 'change'; readonly turn: 'harder' | 'easier' | 'same' | 'start' }
  | { readonly name: 'ground' };

/** How long the shape of a change stands: long enough to be caught by a glance. */
export const CHANGE_MS = 2500;

/**
 * The shape that holds now: 3, 2, 1 before a boundary, the change after it, the ground else.
 * It changes once a second at the most, far below three flashes a second (WCAG 2.2, 2.3.1).
 */
export function watchShape(view: SessionView): WatchShape {
  const { segment, timeline, position } = view;
  if (view.state !== 'running' || segment === undefined || timeline === undefined)
    return { name: 'ground' };
  const count = Math.ceil(view.left / 1000);
  if (count >= 1 && count <= 3) return { name: 'count', n: count as 1 | 2 | 3 };
  if (view.lane !== 'session' || position - segment.start >= CHANGE_MS) return { name: 'ground' };
  const before = timeline.segments[segment.index - 1];
  if (before === undefined) return { name: 'change', turn: 'start' };
  if (segment.effort === before.effort) return { name: 'change', turn: 'same' };
  return { name: 'change', turn: segment.effort > before.effort ? 'harder' : 'easier' };
}

/** The shape as one word, so that a part is drawn again only when it changes. */
export const shapeKey = (shape: WatchShape): string =>
  shape.name === 'count' ? `count-${shape.n}` : shape.name === 'change' ? shape.turn : 'ground';
