import { type ReactNode, useLayoutEffect, useRef } from 'react';

interface DialogProps {
  readonly name: string;
  readonly className: string;
  /** Called when the person leaves it by Escape or the back key. */
  readonly onLeave: () => void;
  readonly children: ReactNode;
}

/** The browser's own modal dialog: it keeps the focus inside and gives it back. */
export function Dialog({ name, className, onLeave, children }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  // Before the page is changed: a dialog that is gone already cannot give the focus back.
  useLayoutEffect(() => {
    const dialog = ref.current;
    if (dialog !== null && !dialog.open) dialog.showModal();
    // What it says is read first; the browser alone would go to the first button.
    dialog?.querySelector<HTMLElement>('h1')?.focus();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      className={className}
      aria-label={name}
      onCancel={(event) => {
        event.preventDefault();
        onLeave();
      }}
    >
      {children}
    </dialog>
  );
}
