import { back, dayText } from '../../copy/back.ts';
import { effortWords } from '../../copy/effort.ts';
import type { SessionBack } from '../../domain/back/session.ts';
import { dayOfEntry } from '../../domain/back/week.ts';
import type { WeekBack } from '../../domain/back/weeks.ts';
import {
  FeltMarks,
  type FeltPoint,
  FeltShape,
  MOST_MARKS,
  type Standing,
  standingOf,
} from './FeltMarks.tsx';
import { Legend, Plot } from './Plot.tsx';

const words = back.felt;

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
      legend={<FeltLegend count={count} />}
      notes={all.length > MOST_MARKS ? [words.only(MOST_MARKS)] : []}
      table={{
        head: [words.date, words.felt, words.target],
        rows: all.map((each) => rowOf(each)).reverse(),
      }}
      draw={(frame) => <FeltMarks frame={frame} points={all.slice(-MOST_MARKS).map(pointOf)} />}
    />
  );
}

const pointOf = ({ entry, felt, target }: SessionBack): FeltPoint => ({
  id: entry.id,
  day: dayOfEntry(entry),
  target,
  ...(felt === undefined ? {} : { felt }),
});

const rowOf = ({ entry, felt, target }: SessionBack): readonly string[] => [
  dayText(dayOfEntry(entry), 'long'),
  felt === undefined ? words.none : `${felt}: ${effortWords(felt)}`,
  String(target),
];

/** What the marks stand for; those that are not there are not explained. */
export function FeltLegend({ count }: { count: (standing: Standing) => number }) {
  return (
    <>
      <Legend name={words.felt}>
        <g transform="translate(13 8)">
          <FeltShape standing="near" />
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
                <FeltShape standing={standing} />
              </g>
            </Legend>
          ),
      )}
    </>
  );
}
