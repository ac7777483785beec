import { memo, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { PART } from '../../copy/words.ts';
import type { Timeline } from '../../domain/timeline/timeline.ts';
import type { Ms } from '../../domain/units.ts';
import { fillOf, Hatches } from './Hatches.tsx';
import { type StripShape, stripShape, type Texture } from './strip-shape.ts';

/** Narrow enough to fit anywhere until the real width is known. */
const FIRST_WIDTH = 288;

function useWidth() {
  const ref = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(FIRST_WIDTH);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => setWidth(Math.round(element.clientWidth) || FIRST_WIDTH);
    measure();
    if (typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}

function Ground({ shape, id, faint }: { shape: StripShape; id: string; faint?: boolean }) {
  const entries = Object.entries(shape.fills) as [Texture, string][];
  return (
    <>
      {!faint &&
        entries.map(([texture, d]) => <path key={texture} d={d} fill={fillOf(id, texture)} />)}
      <path
        d={shape.ridge}
        fill="none"
        stroke="currentColor"
        strokeWidth={faint ? 1 : 1.75}
        strokeDasharray={faint ? '2 3' : undefined}
        strokeLinejoin="round"
      />
    </>
  );
}

/** Parts are marked below the ground: the main set by a heavy line, its ends by posts. */
function Parts({ shape, height }: { shape: StripShape; height: number }) {
  return (
    <>
      {shape.parts.map(({ part, x0, x1 }, i) => (
        <g key={part}>
          <path
            d={`M${x0} ${height}H${x1}`}
            stroke="currentColor"
            strokeWidth={part === 'main' ? 4 : 1.5}
          />
          {i > 0 && (
            <path d={`M${x0} ${height - 3}V${height + 7}`} stroke="currentColor" strokeWidth="2" />
          )}
        </g>
      ))}
    </>
  );
}

interface StripProps {
  readonly timeline: Timeline;
  /** What a screen reader says instead; without it the strip is decoration. */
  readonly label?: string;
  readonly height?: number;
  /** Names of the parts below the strip. */
  readonly named?: boolean;
  /** Length that fills the whole width, when several strips are to be compared. */
  readonly of?: Ms;
  /** Stretches gone through, in seconds: the rest is drawn as a dotted outline. */
  readonly covered?: readonly (readonly [number, number])[];
}

/** The landscape of a session: length is time, height is effort. */
export const Strip = memo(function Strip({
  timeline,
  label,
  height = 56,
  named = false,
  of,
  covered,
}: StripProps) {
  const id = useId().replace(/[^\w-]/g, '');
  const { ref, width: room } = useWidth();
  const width = of === undefined ? room : Math.max(24, (room * timeline.total) / of);
  const ground = height - 8;
  const shape = useMemo(
    () => stripShape(timeline, { width, height: ground }),
    [timeline, width, ground],
  );
  const spoken =
    label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label };
  return (
    <div className="strip" ref={ref}>
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: a title would be a tooltip; it has a label or is hidden */}
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} {...spoken}>
        <Hatches id={id} />
        {covered === undefined ? (
          <Ground shape={shape} id={id} />
        ) : (
          <>
            <clipPath id={`${id}-covered`}>
              {covered.map(([from, to]) => (
                <rect
                  key={from}
                  x={((from * 1000) / timeline.total) * width}
                  width={(((to - from) * 1000) / timeline.total) * width}
                  y="0"
                  height={height}
                />
              ))}
            </clipPath>
            <Ground shape={shape} id={id} faint />
            <g clipPath={`url(#${id}-covered)`}>
              <Ground shape={shape} id={id} />
            </g>
          </>
        )}
        <Parts shape={shape} height={ground} />
      </svg>
      {named && <PartNames shape={shape} />}
    </div>
  );
});

function PartNames({ shape }: { shape: StripShape }) {
  return (
    <div className="strip-names" aria-hidden="true">
      {shape.parts.map(({ part }) => (
        <span key={part} data-part={part}>
          {PART[part]}
        </span>
      ))}
    </div>
  );
}
