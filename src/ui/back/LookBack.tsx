import { useMemo, useState } from 'react';
import { back } from '../../copy/back.ts';
import { common } from '../../copy/common.ts';
import {
  byWeek,
  type LogByWeek,
  sumOf,
  type WeekBack,
  weeksUpTo,
} from '../../domain/back/weeks.ts';
import { type Day, mondayOf } from '../../domain/programme/calendar.ts';
import { useLog, useSettings } from '../app-context.tsx';
import { Screen } from '../parts/Screen.tsx';
import { useDayToday } from './day-today.ts';
import { FeltPlot } from './FeltPlot.tsx';
import { GuidancePlot } from './GuidancePlot.tsx';
import { LoadPlot } from './LoadPlot.tsx';
import { LongestPlot } from './LongestPlot.tsx';
import { MinutesPlot } from './MinutesPlot.tsx';
import { Plots } from './Plots.tsx';

/** A programme of six weeks and what was around it, and bars that a thumb can tell apart. */
const WEEKS = 8;

const BACK = { href: '/done', name: common.done } as const;

/** What the sessions of some weeks add up to: plots, in words, and in numbers. */
export function LookBack() {
  const entries = useLog((l) => l.entries);
  const ready = useLog((l) => l.ready);
  const log = useMemo(() => byWeek(entries), [entries]);
  if (!ready) return null;
  if (log.size === 0)
    return (
      <Screen title={back.title} back={BACK}>
        <p>{back.empty}</p>
      </Screen>
    );
  return <Weeks log={log} />;
}

/** The latest weeks end with this one, or with a later one when a clock was wrong. */
function Weeks({ log }: { log: LogByWeek }) {
  const thisWeek = mondayOf(useDayToday());
  const way = useSettings((s) => (s.askAgain === true ? 'later' : 'at-the-end'));
  const mondays = [...log.keys()];
  const first = mondays.reduce((a, b) => Math.min(a, b));
  const latest = mondays.reduce((a, b) => Math.max(a, b), thisWeek);
  const [last, setLast] = useState(latest);
  // Weeks before the first session are no gap: there was nothing to miss yet.
  const count = Math.max(1, Math.min(WEEKS, (last - first) / 7 + 1));
  const weeks = useMemo(() => weeksUpTo(log, last, count, way), [log, last, count, way]);
  const from = last - 7 * (count - 1);
  return (
    <Screen title={back.title} sub={back.span(from, last + 6)} back={BACK}>
      {last === latest && <ThisWeek weeks={weeks} monday={thisWeek} />}
      <Turning
        earlier={from > first ? () => setLast(last - 7 * WEEKS) : undefined}
        later={last < latest ? () => setLast(Math.min(latest, last + 7 * WEEKS)) : undefined}
      />
      <Plots>
        <MinutesPlot weeks={weeks} />
        <LongestPlot weeks={weeks} />
        <FeltPlot weeks={weeks} />
        <GuidancePlot weeks={weeks} />
        <LoadPlot weeks={weeks} />
      </Plots>
      <Basis weeks={weeks} />
    </Screen>
  );
}

function ThisWeek({ weeks, monday }: { weeks: readonly WeekBack[]; monday: Day }) {
  const { sessions, walk, run, still, extra } = sumOf(weeks.filter((w) => w.monday === monday));
  if (sessions === 0) return <p>{back.noneThisWeek}</p>;
  return <p>{back.thisWeek(sessions, walk + run + still + extra, walk, run, extra)}</p>;
}

/** To the weeks before and after; what cannot be turned to is not offered. */
function Turning({
  earlier,
  later,
}: {
  earlier: (() => void) | undefined;
  later: (() => void) | undefined;
}) {
  if (earlier === undefined && later === undefined) return null;
  return (
    <nav className="row" aria-label={back.turning}>
      <button type="button" className="button" disabled={earlier === undefined} onClick={earlier}>
        {back.earlier}
      </button>
      <button type="button" className="button" disabled={later === undefined} onClick={later}>
        {back.later}
      </button>
    </nav>
  );
}

/** What of the minutes is known only roughly. */
function Basis({ weeks }: { weeks: readonly WeekBack[] }) {
  const all = weeks.flatMap(({ list }) => list);
  const unknown = all.filter(({ basis }) => basis === 'not-known').length;
  const rough = all.filter(({ basis }) => basis !== 'covered').length - unknown;
  if (rough + unknown === 0) return null;
  return (
    <div className="stack tight rule">
      {rough > 0 && <p className="small soft">{back.byHand(rough)}</p>}
      {unknown > 0 && <p className="small soft">{back.notKnown(unknown)}</p>}
    </div>
  );
}
