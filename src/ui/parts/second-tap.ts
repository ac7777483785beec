import type { MouseEvent } from 'react';

/** So soon and so near a second tap belongs to the first (in ms and CSS px; common practice, no source). */
const SOON_MS = 500;
const NEAR_PX = 40;

let first: { readonly x: number; readonly y: number; readonly at: number } | undefined;

/** To be told of a tap after which another control stands where it was made. */
export function noteTap({ clientX: x, clientY: y, timeStamp: at }: MouseEvent): void {
  first = { x, y, at };
}

/**
 * For those controls. Who taps Start twice means to start, and not to hold what has just begun;
 * who goes on twice has not yet seen what is asked there. A key is no tap
 * (UI Events, section 3.4: its click counts 0).
 */
export function dropSecondTap(event: MouseEvent): void {
  if (first === undefined || event.detail === 0) return;
  const away = Math.hypot(event.clientX - first.x, event.clientY - first.y);
  if (event.timeStamp - first.at > SOON_MS || away > NEAR_PX) return;
  event.preventDefault();
  event.stopPropagation();
}
