import { type ReactNode, type RefObject, useEffect, useRef } from 'react';

const CONTROLS = 'button:not([disabled]), a[href], input:not([disabled]), summary';

const controlsIn = (element: Element): HTMLElement[] => [
  ...element.querySelectorAll<HTMLElement>(CONTROLS),
];

type Heir = 'same-place' | 'first';

/**
 * Keeps the focus in a group of controls. A control that was pressed may go, as Walk now does; whoever
 * has no pointer would then begin again at the top of the page. What stands in its place takes it.
 *
 * @param heir which control takes it: the one in the same place, or the first of the group
 */
export function useKeptFocus<E extends HTMLElement>(
  heir: Heir = 'same-place',
): RefObject<E | null> {
  const group = useRef<E>(null);
  useEffect(() => {
    const root = group.current;
    if (root === null) return;
    root.dataset.keepsFocus = '';
    let had: { control: Element; row: Element; group: Element; place: number } | undefined;
    const note = () => {
      const control = document.activeElement;
      const row = control?.parentElement;
      if (control === null || row == null || !root.contains(control)) return;
      const group = row.closest('[data-keeps-focus]') ?? root;
      had = { control, row, group, place: controlsIn(row).indexOf(control as HTMLElement) };
    };
    const gone = new MutationObserver(() => {
      const isLost = had !== undefined && !had.control.isConnected;
      // Somebody who went elsewhere meanwhile, or a page that comes, is left alone.
      if (had === undefined || !isLost || document.activeElement !== document.body) return note();
      // A group inside this one looks after its own, as long as it is there.
      if (had.group !== root && had.group.isConnected) return;
      const row = heir === 'same-place' && root.contains(had.row) ? controlsIn(had.row) : [];
      const all = row.length > 0 ? row : controlsIn(root);
      const place = heir === 'first' ? 0 : Math.min(had.place, all.length - 1);
      // What is folded away does not take it.
      for (const each of all.slice(Math.max(0, place))) {
        each.focus();
        if (document.activeElement === each) return;
      }
    });
    root.addEventListener('focusin', note);
    gone.observe(root, { childList: true, subtree: true });
    return () => {
      root.removeEventListener('focusin', note);
      gone.disconnect();
    };
  }, [heir]);
  return group;
}

/** A group of controls that keeps the focus, and leaves their layout to what is around them. */
export function KeptFocus({ heir, children }: { heir?: Heir; children: ReactNode }) {
  const group = useKeptFocus<HTMLDivElement>(heir);
  return (
    <div ref={group} className="as-if-not-there">
      {children}
    </div>
  );
}
