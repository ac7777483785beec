import { line } from 'd3-shape';
import { back, stretch } from '../../copy/back.ts';
import type { WeekBack } from '../../domain/back/weeks.ts';
import { columns, type Frame, upTo } from './frame.ts';
import { Heights, Mondays, Plot } from './Plot.tsx';
import { rowsOf, toldOf } from './told.ts';

const words = back.longest;

/** Minutes that the picture reaches up to at least: a minute of running is no mountain. */
const LEAST = 4;

/** The longest run without a walk, week by week. */
export function LongestPlot({ weeks }: { weeks: readonly WeekBack[] }) {
  return (
    <Plot
      title={words.title}
      lead={words.lead}
      said={words.said(toldOf(weeks, ({ longestRun }) => longestRun))}
      table={{
        head: [back.week, words.run],
        rows: rowsOf(weeks, ({ longestRun }) => [
          longestRun === undefined ? words.none : stretch(longestRun),
        ]),
      }}
      draw={(frame) => <Line frame={frame} weeks={weeks} />}
    />
  );
}

/** A line through the weeks that are known; where one is not, it ends and begins again. */
function Line({ frame, weeks }: { frame: Frame; weeks: readonly WeekBack[] }) {
  const x = columns(
    frame,
    weeks.map(({ monday }) => monday),
  );
  const y = upTo(
    frame,
    Math.max(LEAST, ...weeks.map(({ longestRun }) => (longestRun ?? 0) / 60_000)),
  );
  const middle = ({ monday }: WeekBack): number => (x(monday) ?? 0) + x.bandwidth() / 2;
  const height = ({ longestRun }: WeekBack): number => y((longestRun ?? 0) / 60_000);
  const path = line<WeekBack>()
    .defined(({ longestRun }) => longestRun !== undefined)
    .x(middle)
    .y(height);
  return (
    <>
      <Heights frame={frame} y={y} />
      <path className="plot-path" d={path([...weeks]) ?? ''} />
      {weeks.map(
        (week) =>
          week.longestRun !== undefined && (
            <g key={week.monday}>
              <circle className="plot-point" cx={middle(week)} cy={height(week)} r="5" />
              <text
                className="over strong"
                x={middle(week)}
                y={height(week) - 11}
                textAnchor="middle"
              >
                {stretch(week.longestRun)}
              </text>
            </g>
          ),
      )}
      <Mondays frame={frame} x={x} />
    </>
  );
}
