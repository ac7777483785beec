import { useEffect, useId, useRef, useState } from 'react';

/** How long a press must last. */
export const PRESS_MS = 1000;

interface PressLongProps {
  readonly name: string;
  /** How to press it: shown below the name and read as its description. */
  readonly how: string;
  readonly className?: string;
  /** After a press of a full second, by finger, mouse, Enter or the space bar. */
  readonly onLong: () => void;
  /** After a shorter press, and for a click made by assistive technology. */
  readonly onShort: () => void;
}

/**
 * A button that answers to a press of one second. A short press is answered too (`onShort`
 * offers the same with a second tap), because not everyone can hold a finger still.
 */
export function PressLong({ name, how, className, onLong, onShort }: PressLongProps) {
  const [pressed, setPressed] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const done = useRef(false);
  const howId = useId();
  useEffect(() => () => clearTimeout(timer.current), []);

  const press = () => {
    if (timer.current !== undefined) return;
    done.current = false;
    setPressed(true);
    timer.current = setTimeout(() => {
      done.current = true;
      timer.current = undefined;
      setPressed(false);
      onLong();
    }, PRESS_MS);
  };
  const release = () => {
    clearTimeout(timer.current);
    timer.current = undefined;
    setPressed(false);
  };

  return (
    <button
      type="button"
      className={`press-long ${className ?? ''}`}
      data-pressed={pressed}
      aria-describedby={howId}
      onPointerDown={press}
      onPointerUp={release}
      onPointerLeave={release}
      onPointerCancel={release}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        if (!event.repeat) press();
      }}
      onKeyUp={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        const short = timer.current !== undefined;
        release();
        if (short) onShort();
      }}
      onClick={() => {
        if (!done.current) onShort();
        done.current = false;
      }}
    >
      <span>
        {name}
        <small id={howId} aria-hidden="true">
          {how}
        </small>
      </span>
    </button>
  );
}
