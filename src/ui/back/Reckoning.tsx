import { useId, useState } from 'react';
import { type EventBasis, event, rangeText, timeText } from '../../copy/event.ts';
import { type Estimate, finishBetween, measuredSessions } from '../../domain/back/estimate.ts';
import type { EventSession } from '../../domain/back/event-session.ts';
import { mixOf } from '../../domain/back/mix.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import type { Day } from '../../domain/programme/calendar.ts';
import { Choices } from '../parts/Choices.tsx';
import { Assumptions } from './Assumptions.tsx';
import { OwnPaces, Trial } from './EventFields.tsx';
import { type Given, reckon } from './reckon.ts';

/** The event's length, the session whose turns are taken to it, and what was logged. */
export interface ReckoningProps {
  readonly metres: number;
  readonly session: EventSession;
  readonly entries: readonly LogEntry[];
  readonly today: Day;
}

/** An estimate, what it is reckoned from, and what it assumes. */
export function Reckoning({ metres, session, entries, today }: ReckoningProps) {
  const runs = mixOf(session.timeline).run > 0;
  const measured = measuredSessions(entries, today);
  const [basis, setBasis] = useState<EventBasis>(measured.length > 0 ? 'measured' : 'assumed');
  const [given, setGiven] = useState<Given>({
    walk: 720,
    run: 480,
    trialMetres: '',
    trialTime: '',
  });
  const change = (part: Partial<Given>) => setGiven({ ...given, ...part });
  const found = reckon(basis, { metres, session, entries, today, given });
  const options = (Object.keys(event.bases) as EventBasis[])
    .filter((value) => value !== 'measured' || measured.length > 0)
    .map((value) => ({ value, name: event.bases[value][0], help: event.bases[value][1] }));
  return (
    <>
      <section className="stack rule" aria-live="polite">
        <h2>{event.howLong}</h2>
        {found.ok ? <Range metres={metres} estimate={found.value} /> : <p>{found.error}</p>}
      </section>
      {found.ok && <Finish estimate={found.value} />}
      <Choices legend={event.basis} list options={options} value={basis} onChange={setBasis} />
      {basis === 'own' && <OwnPaces given={given} onChange={change} runs={runs} />}
      {basis === 'trial' && <Trial given={given} onChange={change} />}
      <Assumptions basis={basis} week={session.week} measured={measured.length} runs={runs} />
    </>
  );
}

function Range({ metres, estimate }: { metres: number; estimate: Estimate }) {
  const { low, high } = estimate;
  return (
    <>
      <p className="range figures">{rangeText(low, high)}</p>
      <p className="figures">{event.perKm(low / metres, high / metres)}</p>
      <p className="small soft">{event.notGoal}</p>
    </>
  );
}

/** Between its hours and its minutes a field holds no time: it is left alone, and nothing is said. */
function Finish({ estimate }: { estimate: Estimate }) {
  const id = useId();
  const [text, setText] = useState('10:00');
  const start = minuteOfDay(text);
  return (
    <div className="field">
      <label htmlFor={id}>{event.start}</label>
      <input
        id={id}
        className="line short figures"
        type="time"
        value={text}
        onChange={({ target }) => setText(target.value)}
      />
      <p className="figures" aria-live="polite">
        {start !== undefined && event.finish(...finishText(start, estimate))}
      </p>
      <p className="small soft">{event.closing}</p>
    </div>
  );
}

function minuteOfDay(text: string): number | undefined {
  const found = /^(\d{2}):(\d{2})/.exec(text);
  return found === null ? undefined : Number(found[1]) * 60 + Number(found[2]);
}

function finishText(start: number, estimate: Estimate): [string, string] {
  const [from, to] = finishBetween(start, estimate);
  return [timeText(from), timeText(to)];
}
