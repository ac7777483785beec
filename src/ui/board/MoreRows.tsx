import { useState } from 'react';
import { boardPage as words } from '../../copy/board-page.ts';
import { ROWS, rowsAtFirst } from './board-rows.ts';

export interface More {
  readonly shown: number;
  readonly left: number;
  readonly next: number;
  readonly show: () => void;
}

/** A long list a page at a time: five hundred people at once would keep the page busy. */
export function useMore(count: number, groups: number): More {
  const first = rowsAtFirst(groups);
  const [asked, setAsked] = useState(0);
  const shown = Math.min(count, first + asked);
  const next = Math.min(ROWS, count - shown);
  return { shown, left: count - shown, next, show: () => setAsked(asked + ROWS) };
}

export const MoreRows = ({ more, group }: { more: More; group: string }) => (
  <button type="button" className="button" onClick={more.show}>
    {words.more(more.next, group)}
  </button>
);
