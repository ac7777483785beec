import type { MouseEvent } from 'react';
import { useApp } from '../app-context.tsx';

/** So soon and so near a second tap belongs to the first (in ms and CSS px; common practice, no source). */
const SOON_MS = 500;
const NEAR_PX = 40;

interface Tap {
  readonly x: number;
  readonly y: number;
  readonly at: number;
}

/** By the app that was tapped: it outlives the screen that the tap was made on. */
const taps = new WeakMap<object, Tap>();

/** What keeps a nervous second tap from a control that came to stand where the first was made. */
export interface SecondTap {
  /** To be told of a tap after which another control stands where it was made. */
  note(event: MouseEvent): void;
  /**
   * For those controls, as their `onClickCapture`. Who taps Start twice means to start, and not to
   * hold what has just begun; who goes on twice has not yet seen what is asked there.
   */
  drop(event: MouseEvent): void;
}

/**
 * A key, a script or a reader is no finger: its click counts 0 (UI Events, section 3.4) or, in
 * WebKit, is told to be at the page's very corner, where nothing is to be tapped.
 */
const isTap = ({ detail, clientX, clientY }: MouseEvent): boolean =>
  detail > 0 && (clientX !== 0 || clientY !== 0);

/** The taps of this app. */
export function useSecondTap(): SecondTap {
  const app = useApp();
  return {
    note({ clientX: x, clientY: y, timeStamp: at }) {
      taps.set(app, { x, y, at });
    },
    drop(event) {
      const first = taps.get(app);
      // Whatever is pressed next, there is no second tap after it.
      taps.delete(app);
      if (first === undefined || !isTap(event)) return;
      const away = Math.hypot(event.clientX - first.x, event.clientY - first.y);
      if (event.timeStamp - first.at > SOON_MS || away > NEAR_PX) return;
      event.preventDefault();
      event.stopPropagation();
    },
  };
}
