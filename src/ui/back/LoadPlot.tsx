import { back } from '../../copy/back.ts';
import { loadOf } from '../../domain/back/session.ts';
import type { WeekBack } from '../../domain/back/weeks.ts';
import { type Bar, Bars } from './Bars.tsx';
import { Plot } from './Plot.tsx';
import { rowsOf, toldOf } from './told.ts';

const words = back.load;
const LAYERS = [{ name: words.bar, texture: 'jog' }] as const;

const partly = (week: WeekBack): boolean => week.rated < week.sessions;
const label = (week: WeekBack): string =>
  `${Math.round(loadOf(week.load))}${partly(week) ? '+' : ''}`;

/** Towpath's own measure of what each week asked, where there are answers. */
export function LoadPlot({ weeks }: { weeks: readonly WeekBack[] }) {
  const bars = weeks.map(
    (week): Bar => ({
      monday: week.monday,
      values: { [words.bar]: loadOf(week.load) },
      label: label(week),
      partly: partly(week),
    }),
  );
  return (
    <Plot
      title={words.title}
      lead={words.lead}
      said={words.said(toldOf(weeks, ({ load }) => loadOf(load)))}
      notes={weeks.some(partly) ? [words.partly] : []}
      table={{
        head: [back.week, words.load, words.rated],
        rows: rowsOf(weeks, (week) => [label(week), words.ratedOf(week.rated, week.sessions)]),
      }}
      draw={(frame, id) => <Bars frame={frame} id={id} bars={bars} layers={LAYERS} />}
    />
  );
}
