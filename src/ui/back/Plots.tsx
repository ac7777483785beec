import {
  createContext,
  type ReactNode,
  useContext,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';

/** Where nothing can be measured. */
const UNMEASURED = 288;

const Width = createContext(UNMEASURED);

/** The width that a plot has. */
export const usePlotWidth = (): number => useContext(Width);

/**
 * Room for plots below one another. They have one width: it is measured once for all of them, and
 * nothing is drawn before it is known, so that nothing is drawn twice.
 */
export function Plots({ children }: { children: ReactNode }) {
  const ref = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState<number>();
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => setWidth(Math.round(element.clientWidth) || UNMEASURED);
    measure();
    if (typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return (
    <div className="plots" ref={ref}>
      {width !== undefined && <Width value={width}>{children}</Width>}
    </div>
  );
}
