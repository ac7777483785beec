import { useEffect, useRef } from 'react';
import { hear } from '../../copy/hear.ts';
import { place } from '../../copy/times.ts';
import type { Stop } from '../../domain/cues/stops.ts';

interface LinesProps {
  readonly stops: readonly Stop[];
  readonly current: number;
  readonly onChoose: (index: number) => void;
}

/** All that is said, each with its time in the session; the one that sounds is marked and in view. */
export function HearLines({ stops, current, onChoose }: LinesProps) {
  const list = useRef<HTMLOListElement>(null);
  const shown = useRef(current);
  useEffect(() => {
    if (shown.current === current) return;
    shown.current = current;
    list.current?.children[current]?.scrollIntoView({ block: 'nearest' });
  }, [current]);
  return (
    <section className="stack">
      <h2>{hear.said}</h2>
      <p className="small soft">{stops.length === 0 ? hear.composing : hear.saidHelp}</p>
      <ol className="hear-lines" ref={list}>
        {stops.map((stop, i) => (
          <li key={stop.from}>
            <Line stop={stop} current={i === current} onChoose={() => onChoose(i)} />
          </li>
        ))}
      </ol>
    </section>
  );
}

interface LineProps {
  readonly stop: Stop;
  readonly current: boolean;
  readonly onChoose: () => void;
}

function Line({ stop: { session, cue }, current, onChoose }: LineProps) {
  const { kind, text, note } = cue;
  const leads = kind === 'start' || kind === 'change' || kind === 'finish';
  return (
    <button
      type="button"
      className="hear-line"
      aria-current={current ? 'true' : undefined}
      data-leads={leads}
      onClick={onChoose}
    >
      <span className="figures">{place(session)}</span>
      <span>
        {text}
        {note !== undefined && <small>{hear.note(note)}</small>}
      </span>
    </button>
  );
}
