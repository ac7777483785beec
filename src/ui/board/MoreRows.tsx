import { useDeferredValue, useState } from 'react';
import { boardPage as words } from '../../copy/board-page.ts';
import { useLastPerson } from './board-context.tsx';
import { ROWS, rowsAtFirst } from './board-rows.ts';

/** How far a list is shown. `next`: how many `show` adds. */
export interface More {
  readonly shown: number;
  readonly left: number;
  readonly next: number;
  readonly show: () => void;
}

/** Rows of a group in the first picture of the page; the others follow right behind it. */
const AT_ONCE = 2;

/** A long list a page at a time: five hundred people at once would keep the page busy. */
export function useMore(count: number, groups: number): More {
  const [asked, setAsked] = useState(0);
  const wanted = Math.min(count, rowsAtFirst(groups) + asked);
  // Who comes back from a person finds their line: it must be there at once.
  const isBack = useLastPerson().size > 0;
  const shown = useDeferredValue(wanted, isBack ? wanted : Math.min(wanted, AT_ONCE));
  const next = Math.min(ROWS, count - wanted);
  return { shown, left: count - wanted, next, show: () => setAsked(asked + ROWS) };
}

/** The button that shows the next rows of a group. It says how many. */
export const MoreRows = ({ more, group }: { more: More; group: string }) => (
  <button type="button" className="button" onClick={more.show}>
    {words.more(more.next, group)}
  </button>
);
