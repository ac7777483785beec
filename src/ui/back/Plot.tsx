import type { ScaleBand, ScaleLinear } from 'd3-scale';
import { type ReactNode, useId } from 'react';
import { back, dayText } from '../../copy/back.ts';
import { fillOf, Hatches } from '../parts/Hatches.tsx';
import type { Texture } from '../parts/strip-shape.ts';
import { everyNth, type Frame, frameOf } from './frame.ts';
import { Numbers, type Table } from './Numbers.tsx';
import { usePlotWidth } from './Plots.tsx';

const HEIGHT = 210;

interface PlotProps {
  readonly title: string;
  readonly lead: string;
  /** What the picture shows, for those who do not see it. */
  readonly said: string;
  readonly table: Table;
  readonly legend?: ReactNode;
  /** Said below the numbers' place: what the numbers leave out. */
  readonly notes?: readonly string[];
  readonly draw: (frame: Frame, id: string) => ReactNode;
  readonly children?: ReactNode;
}

/** A picture with its title, what it means, what it shows in words, and its numbers in a table. */
export function Plot({ title, lead, said, table, legend, notes, draw, children }: PlotProps) {
  const id = useId();
  const width = usePlotWidth();
  const frame = frameOf(width, HEIGHT);
  return (
    <section className="plot stack rule" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{title}</h2>
      <p className="small">{lead}</p>
      <div className="plot-picture">
        <svg
          width={width}
          height={HEIGHT}
          viewBox={`0 0 ${width} ${HEIGHT}`}
          role="img"
          aria-label={said}
        >
          <Hatches id={id} />
          {draw(frame, id)}
        </svg>
      </div>
      {legend !== undefined && <ul className="plot-legend">{legend}</ul>}
      {notes?.map((note) => (
        <p className="small soft" key={note}>
          {note}
        </p>
      ))}
      <details>
        <summary>{back.numbers}</summary>
        <Numbers caption={title} table={table} />
      </details>
      {children}
    </section>
  );
}

/** What a texture or a mark stands for. */
export function Legend({ name, children }: { name: string; children: ReactNode }) {
  return (
    <li>
      <svg width="26" height="16" viewBox="0 0 26 16" aria-hidden="true">
        {children}
      </svg>
      {name}
    </li>
  );
}

/** A line of the legend for a texture; a picture of its own, so with hatches of its own. */
export function Swatch({ name, texture }: { name: string; texture: Texture }) {
  const id = useId();
  return (
    <Legend name={name}>
      <Hatches id={id} />
      <rect className="plot-bar" x="1" y="1" width="24" height="14" fill={fillOf(id, texture)} />
    </Legend>
  );
}

/** Lines across at round numbers, and the ground. */
export function Heights({ frame, y }: { frame: Frame; y: ScaleLinear<number, number> }) {
  return (
    <>
      {y.ticks(3).map((tick) => (
        <g key={tick}>
          <path
            className={tick === 0 ? 'plot-ground' : 'plot-line'}
            d={`M${frame.left} ${y(tick)}H${frame.right}`}
          />
          <text x={frame.left - 6} y={y(tick) + 4} textAnchor="end">
            {tick}
          </text>
        </g>
      ))}
    </>
  );
}

/** Mondays below their columns, as many as there is room for; the latest always. */
export function Mondays({ frame, x }: { frame: Frame; x: ScaleBand<number> }) {
  const all = x.domain();
  const nth = everyNth(x.step());
  return (
    <>
      {all.map(
        (monday, n) =>
          (all.length - 1 - n) % nth === 0 && (
            <text
              key={monday}
              x={(x(monday) ?? 0) + x.bandwidth() / 2}
              y={frame.height - 7}
              textAnchor="middle"
            >
              {dayText(monday, 'short')}
            </text>
          ),
      )}
    </>
  );
}
