import { back, dayText } from '../../copy/back.ts';
import { board, gapText, numberText } from '../../copy/board.ts';
import { personPage } from '../../copy/board-page.ts';
import type { BoardSession } from '../../domain/board/board.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import {
  FeltMarks,
  type FeltPoint,
  MOST_MARKS,
  type Standing,
  standingOf,
} from '../back/FeltMarks.tsx';
import { FeltLegend } from '../back/FeltPlot.tsx';
import { Plot } from '../back/Plot.tsx';
import { Plots } from '../back/Plots.tsx';

const words = personPage.felt;

/** How hard a person's sessions felt, against how hard they were meant to feel. */
export function PersonFelt({ sessions }: { sessions: readonly BoardSession[] }) {
  const all = sessions.flatMap(pointOf);
  if (all.length === 0)
    return (
      <section className="stack rule">
        <h2>{words.title}</h2>
        <p>{words.none}</p>
      </section>
    );
  const count = (standing: Standing): number =>
    all.filter((each) => standingOf(each) === standing).length;
  return (
    <Plots>
      <Plot
        title={words.title}
        lead={words.lead}
        said={words.said(all.length, count('near'), count('harder'), count('easier'))}
        legend={<FeltLegend count={count} />}
        notes={all.length > MOST_MARKS ? [back.felt.only(MOST_MARKS)] : [board.compare]}
        table={{
          head: [words.date, back.felt.felt, back.felt.target, words.gap],
          rows: all.map(rowOf).reverse(),
        }}
        draw={(frame) => <FeltMarks frame={frame} points={all.slice(-MOST_MARKS)} />}
      />
    </Plots>
  );
}

/** Only what was rated: a day on the leader's list says nothing of how it felt. */
function pointOf({ id, localDate, felt, target, session }: BoardSession): readonly FeltPoint[] {
  const day = dayOf(localDate);
  if (felt === undefined || day === undefined) return [];
  return [{ id: id ?? `${localDate} ${session}`, day, felt, target }];
}

const rowOf = ({ day, felt = 0, target }: FeltPoint): readonly string[] => [
  dayText(day, 'long'),
  numberText(felt),
  numberText(target),
  gapText(felt - target),
];
