import { scalePoint } from 'd3-scale';
import { symbol, symbolCircle, symbolTriangle } from 'd3-shape';
import { back, dayText } from '../../copy/back.ts';
import { effortWords } from '../../copy/effort.ts';
import type { SessionBack } from '../../domain/back/session.ts';
import { dayOfEntry } from '../../domain/back/week.ts';
import type { WeekBack } from '../../domain/back/weeks.ts';
import { mondayOf } from '../../domain/programme/calendar.ts';
import { type Frame, upTo } from './frame.ts';
import { Heights, Legend, Plot } from './Plot.tsx';

const words = back.felt;

/** Marks stay apart on the narrowest phone. */
const MOST = 24;
/** Below it, a difference is ordinary. */
const APART = 2;

type Standing = 'near' | 'harder' | 'easier';

function standingOf({ felt, target }: SessionBack): Standing | undefined {
  if (felt === undefined) return undefined;
  if (felt - target >= APART) return 'harder';
  return target - felt >= APART ? 'easier' : 'near';
}

const circle = symbol(symbolCircle, 75)() ?? '';
const triangle = symbol(symbolTriangle, 80)() ?? '';

/** A circle; a triangle that points up for harder, down for easier. */
const Shape = ({ standing }: { standing: Standing }) => (
  <path
    className="plot-point"
    d={standing === 'near' ? circle : triangle}
    transform={standing === 'easier' ? 'rotate(180)' : undefined}
  />
);

/** How hard each session felt, against how hard it was meant to feel. */
export function FeltPlot({ weeks }: { weeks: readonly WeekBack[] }) {
  const all = weeks.flatMap(({ list }) => list);
  const count = (standing: Standing): number =>
    all.filter((each) => standingOf(each) === standing).length;
  const rated = all.filter(({ felt }) => felt !== undefined).length;
  return (
    <Plot
      title={words.title}
      lead={words.lead}
      said={words.said(all.length, rated, count('near'), count('harder'), count('easier'))}
      legend={
        <>
          <Legend name={words.felt}>
            <g transform="translate(13 8)">
              <Shape standing="near" />
            </g>
          </Legend>
          <Legend name={words.target}>
            <path className="plot-meant" d="M4 8H22" />
          </Legend>
          {(['harder', 'easier'] as const).map(
            (standing) =>
              count(standing) > 0 && (
                <Legend key={standing} name={words[standing]}>
                  <g transform="translate(13 8)">
                    <Shape standing={standing} />
                  </g>
                </Legend>
              ),
          )}
        </>
      }
      notes={all.length > MOST ? [words.only(MOST)] : []}
      table={{
        head: [words.date, words.felt, words.target],
        rows: all.map((each) => rowOf(each)).reverse(),
      }}
      draw={(frame) => <Marks frame={frame} sessions={all.slice(-MOST)} />}
    />
  );
}

const rowOf = ({ entry, felt, target }: SessionBack): readonly string[] => [
  dayText(dayOfEntry(entry), 'long'),
  felt === undefined ? words.none : `${felt}: ${effortWords(felt)}`,
  String(target),
];

function Marks({ frame, sessions }: { frame: Frame; sessions: readonly SessionBack[] }) {
  const x = scalePoint(
    sessions.map(({ entry }) => entry.id),
    [frame.left, frame.right],
  ).padding(0.6);
  const y = upTo(frame, 10);
  const reach = Math.min(11, x.step() / 2 - 1 || 11);
  return (
    <>
      <Heights frame={frame} y={y} />
      {sessions.map((each) => {
        const [at, standing] = [x(each.entry.id) ?? 0, standingOf(each)];
        const meant = y(each.target);
        return (
          <g key={each.entry.id}>
            {each.felt !== undefined && (
              <path className="plot-stem" d={`M${at} ${meant}V${y(each.felt)}`} />
            )}
            <path className="plot-meant" d={`M${at - reach} ${meant}H${at + reach}`} />
            {standing !== undefined && (
              <g transform={`translate(${at} ${y(each.felt ?? 0)})`}>
                <Shape standing={standing} />
              </g>
            )}
          </g>
        );
      })}
      <Dates frame={frame} sessions={sessions} at={(id) => x(id) ?? 0} />
    </>
  );
}

/** The day of the first session of a week, where there is room for it. */
function Dates({
  frame,
  sessions,
  at,
}: {
  frame: Frame;
  sessions: readonly SessionBack[];
  at: (id: string) => number;
}) {
  let free = Number.NEGATIVE_INFINITY;
  let week = Number.NaN;
  return (
    <>
      {sessions.map(({ entry }) => {
        const day = dayOfEntry(entry);
        const [place, first] = [at(entry.id), mondayOf(day) !== week];
        week = mondayOf(day);
        if (!first || place < free) return null;
        free = place + 46;
        return (
          <text
            key={entry.id}
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
