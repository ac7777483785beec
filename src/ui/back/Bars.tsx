import type { ScaleBand, ScaleLinear } from 'd3-scale';
import { stack } from 'd3-shape';
import { fillOf } from '../parts/Hatches.tsx';
import type { Texture } from '../parts/strip-shape.ts';
import { columns, type Frame, upTo } from './frame.ts';
import { Heights, Mondays } from './Plot.tsx';

/** One kind of what a bar is made of, and the hatching by which it is told apart. */
export interface Layer {
  readonly name: string;
  readonly texture: Texture;
}

/** One week, by its Monday as a `Day`; values in whatever the plot counts. */
export interface Bar {
  readonly monday: number;
  /** By the layers' names. */
  readonly values: Readonly<Record<string, number>>;
  /** Stands over the bar. */
  readonly label: string;
  /** The bar is not all of it. */
  readonly partly?: boolean;
}

interface BarsProps {
  readonly frame: Frame;
  readonly id: string;
  readonly bars: readonly Bar[];
  readonly layers: readonly Layer[];
  /** Values that are marked by a line across, in place of the round ones. */
  readonly lines?: readonly number[];
}

/** A bar for each week, its layers one on the other, told apart by their hatching. */
export function Bars({ frame, id, bars, layers, lines = [] }: BarsProps) {
  const names = layers.map(({ name }) => name);
  const sums = bars.map(({ values }) => names.reduce((sum, name) => sum + (values[name] ?? 0), 0));
  const x = columns(
    frame,
    bars.map(({ monday }) => monday),
  );
  const y = upTo(frame, Math.max(...sums, ...lines));
  const series = stack<Bar>()
    .keys(names)
    .value((bar, name) => bar.values[name] ?? 0)([...bars]);
  return (
    <>
      {lines.length === 0 && <Heights frame={frame} y={y} />}
      {series.map((layer, n) =>
        layer.map(([from, to], week) => {
          const bar = bars[week];
          if (bar === undefined || to <= from) return null;
          return (
            <rect
              key={`${layer.key} ${bar.monday}`}
              className="plot-bar"
              x={x(bar.monday)}
              width={x.bandwidth()}
              y={y(to)}
              height={y(from) - y(to)}
              fill={fillOf(id, layers[n]?.texture ?? 'walk')}
              strokeDasharray={bar.partly ? '4 3' : undefined}
            />
          );
        }),
      )}
      {lines.length > 0 && <Lines frame={frame} y={y} lines={lines} />}
      <Labels bars={bars} sums={sums} x={x} y={y} />
      <Mondays frame={frame} x={x} />
    </>
  );
}

function Lines({
  frame,
  y,
  lines,
}: {
  frame: Frame;
  y: ScaleLinear<number, number>;
  lines: readonly number[];
}) {
  return (
    <>
      <path className="plot-ground" d={`M${frame.left} ${y(0)}H${frame.right}`} />
      {[0, ...lines].map((at) => (
        <g key={at}>
          {at > 0 && <path className="plot-mark" d={`M${frame.left} ${y(at)}H${frame.right}`} />}
          <text x={frame.left - 6} y={y(at) + 4} textAnchor="end">
            {at}
          </text>
        </g>
      ))}
    </>
  );
}

function Labels({
  bars,
  sums,
  x,
  y,
}: {
  bars: readonly Bar[];
  sums: readonly number[];
  x: ScaleBand<number>;
  y: ScaleLinear<number, number>;
}) {
  return (
    <>
      {bars.map(({ monday, label }, week) => (
        <text
          key={monday}
          className="over strong"
          x={(x(monday) ?? 0) + x.bandwidth() / 2}
          y={y(sums[week] ?? 0) - 5}
          textAnchor="middle"
        >
          {label}
        </text>
      ))}
    </>
  );
}
