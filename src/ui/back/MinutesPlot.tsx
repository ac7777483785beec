import { back, wholeMinutes } from '../../copy/back.ts';
import { sumOf, type WeekBack } from '../../domain/back/weeks.ts';
import { type Bar, Bars, type Layer } from './Bars.tsx';
import { Plot, Swatch } from './Plot.tsx';
import { rowsOf, toldOf } from './told.ts';

const words = back.minutes;

const LAYERS = {
  walk: { name: words.walk, texture: 'walk' },
  run: { name: words.run, texture: 'run' },
  still: { name: words.still, texture: 'still' },
  extra: { name: words.extra, texture: 'brisk' },
} as const satisfies Readonly<Record<string, Layer>>;
type Kind = keyof typeof LAYERS;
const KINDS = Object.keys(LAYERS) as readonly Kind[];

const together = (week: WeekBack): number => week.walk + week.run + week.still + week.extra;

/** Minutes walked and run by weeks; standing and what was added only where there was some. */
export function MinutesPlot({ weeks }: { weeks: readonly WeekBack[] }) {
  const all = sumOf(weeks);
  const kinds = KINDS.filter((kind) => kind === 'walk' || kind === 'run' || all[kind] > 0);
  const bars = weeks.map(
    (week): Bar => ({
      monday: week.monday,
      values: Object.fromEntries(kinds.map((kind) => [LAYERS[kind].name, week[kind] / 60_000])),
      label: String(wholeMinutes(together(week))),
    }),
  );
  return (
    <Plot
      title={words.title}
      lead={words.lead}
      said={words.said(toldOf(weeks, together))}
      legend={kinds.map((kind) => <Swatch key={kind} {...LAYERS[kind]} />)}
      notes={all.extra > 0 ? [words.extraHelp] : []}
      table={{
        head: [back.week, ...kinds.map((kind) => LAYERS[kind].name), back.total],
        rows: rowsOf(weeks, (week) => [
          ...kinds.map((kind) => String(wholeMinutes(week[kind]))),
          String(wholeMinutes(together(week))),
        ]),
      }}
      draw={(frame, id) => (
        <Bars frame={frame} id={id} bars={bars} layers={kinds.map((kind) => LAYERS[kind])} />
      )}
    />
  );
}
