import { back, wholeMinutes } from '../../copy/back.ts';
import { capital } from '../../copy/words.ts';
import { againstGuidance, asModerate, GUIDANCE } from '../../domain/back/guidance.ts';
import { ENERGY, intensityOf } from '../../domain/back/intensity.ts';
import type { WeekBack } from '../../domain/back/weeks.ts';
import { ACTIVITIES } from '../../domain/programme/plan.ts';
import { type Bar, Bars } from './Bars.tsx';
import { Numbers, type Table } from './Numbers.tsx';
import { Legend, Plot, Swatch } from './Plot.tsx';
import { rowsOf, toldOf } from './told.ts';

const words = back.guidance;
const LAYERS = [
  { name: words.moderate, texture: 'walk' },
  { name: words.vigorous, texture: 'run' },
] as const;
const LINES = [GUIDANCE.from / 60_000, GUIDANCE.to / 60_000] as const;

/** Which activity counts how often, as the domain's table has it. */
const KINDS: Table = {
  head: [words.activity, words.met, words.code, words.counts],
  rows: ACTIVITIES.map((activity) => {
    const { met, code } = ENERGY[activity];
    return [capital(activity), met.toFixed(1), code ?? words.noCode, words.times[intensityOf(met)]];
  }),
};

/** Minutes by weeks as the World Health Organization's guidance counts them. */
export function GuidancePlot({ weeks }: { weeks: readonly WeekBack[] }) {
  const bars = weeks.map(
    (week): Bar => ({
      monday: week.monday,
      values: {
        [words.moderate]: week.moderate / 60_000,
        [words.vigorous]: (week.vigorous * GUIDANCE.vigorousCountsAs) / 60_000,
      },
      label: String(wholeMinutes(asModerate(week))),
    }),
  );
  return (
    <Plot
      title={words.title}
      lead={words.lead}
      said={words.said(toldOf(weeks, asModerate))}
      legend={
        <>
          {LAYERS.map((layer) => (
            <Swatch key={layer.name} {...layer} />
          ))}
          <Legend name={words.advised}>
            <path className="plot-mark" d="M0 8H26" />
          </Legend>
        </>
      }
      notes={[words.notAll]}
      table={{
        head: [back.week, words.moderateShort, words.vigorousShort, words.counted],
        rows: rowsOf(weeks, (week) => [
          String(wholeMinutes(week.moderate)),
          String(wholeMinutes(week.vigorous)),
          `${wholeMinutes(asModerate(week))}${words.standing[againstGuidance(asModerate(week))]}`,
        ]),
      }}
      draw={(frame, id) => <Bars frame={frame} id={id} bars={bars} layers={LAYERS} lines={LINES} />}
    >
      <details>
        <summary>{words.how}</summary>
        <p className="small">{words.howBody}</p>
        <Numbers caption={words.how} table={KINDS} />
        <p className="small soft">{words.sources}</p>
      </details>
    </Plot>
  );
}
