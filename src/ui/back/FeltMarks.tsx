import { scalePoint } from 'd3-scale';
import { symbol, symbolCircle, symbolTriangle } from 'd3-shape';
import { dayText } from '../../copy/back.ts';
import { type Day, mondayOf } from '../../domain/programme/calendar.ts';
import { type Frame, upTo } from './frame.ts';
import { Heights } from './Plot.tsx';

/** One session as it felt, from 0 to 10, and as it was meant. */
export interface FeltPoint {
  readonly id: string;
  readonly day: Day;
  readonly felt?: number;
  readonly target: number;
}

/** Marks stay apart on the narrowest phone. */
export const MOST_MARKS = 24;
/** Below it, a difference is ordinary. */
const APART = 2;

/** How a session felt against what it was meant to be; `near` is an ordinary difference. */
export type Standing = 'near' | 'harder' | 'easier';

/** The mark that a session gets; nothing where it was not rated. */
export function standingOf({
  felt,
  target,
}: Pick<FeltPoint, 'felt' | 'target'>): Standing | undefined {
  if (felt === undefined) return undefined;
  if (felt - target >= APART) return 'harder';
  return target - felt >= APART ? 'easier' : 'near';
}

const circle = symbol(symbolCircle, 75)() ?? '';
const triangle = symbol(symbolTriangle, 80)() ?? '';

/** A circle; a triangle that points up for harder, down for easier. */
export const FeltShape = ({ standing }: { standing: Standing }) => (
  <path
    className="plot-point"
    d={standing === 'near' ? circle : triangle}
    transform={standing === 'easier' ? 'rotate(180)' : undefined}
  />
);

interface MarksProps {
  readonly frame: Frame;
  /** In the order of time, `MOST_MARKS` at most. */
  readonly points: readonly FeltPoint[];
}

/** Each session as a mark, with a stem to the line that it was meant to be at. */
export function FeltMarks({ frame, points }: MarksProps) {
  const x = scalePoint(
    points.map(({ id }) => id),
    [frame.left, frame.right],
  ).padding(0.6);
  const y = upTo(frame, 10);
  const reach = Math.min(11, x.step() / 2 - 1 || 11);
  return (
    <>
      <Heights frame={frame} y={y} />
      {points.map((each) => {
        const [at, standing] = [x(each.id) ?? 0, standingOf(each)];
        const meant = y(each.target);
        return (
          <g key={each.id}>
            {each.felt !== undefined && (
              <path className="plot-stem" d={`M${at} ${meant}V${y(each.felt)}`} />
            )}
            <path className="plot-meant" d={`M${at - reach} ${meant}H${at + reach}`} />
            {standing !== undefined && (
              <g transform={`translate(${at} ${y(each.felt ?? 0)})`}>
                <FeltShape standing={standing} />
              </g>
            )}
          </g>
        );
      })}
      <Dates frame={frame} points={points} at={(id) => x(id) ?? 0} />
    </>
  );
}

/** The day of the first session of a week, where there is room for it. */
function Dates({ frame, points, at }: MarksProps & { at: (id: string) => number }) {
  let free = Number.NEGATIVE_INFINITY;
  let week = Number.NaN;
  return (
    <>
      {points.map(({ id, day }) => {
        const [place, first] = [at(id), mondayOf(day) !== week];
        week = mondayOf(day);
        if (!first || place < free) return null;
        free = place + 46;
        return (
          <text
            key={id}
            x={Math.min(Math.max(place, frame.left + 12), frame.right - 20)}
            y={frame.height - 7}
            textAnchor="middle"
          >
            {dayText(day, 'short')}
          </text>
        );
      })}
    </>
  );
}
