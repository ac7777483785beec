import { useEffect, useId, useRef } from 'react';
import { Link } from 'wouter';
import type { IntakeReport, IntakeView, Left } from '../../app/board-contract.ts';
import { leftWords, bringIn as words } from '../../copy/bring-in.ts';
import { boardAt } from './addresses.ts';
import { useBoardState, useBoardStore } from './board-context.tsx';

/** Aloud only now and then: every file would be too much to hear. */
const STEP = 25;

/** How far it is, for the eye all the time, for the ear every quarter. */
export function BringInReading({ view }: { view: Extract<IntakeView, { name: 'reading' }> }) {
  const store = useBoardStore();
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  // The button that began it is gone.
  useEffect(() => heading.current?.focus(), []);
  const percent = Math.floor(view.share * 100);
  const quarter = Math.floor(percent / STEP) * STEP;
  const aloud = useRef({ quarter: -1, said: '' });
  if (aloud.current.quarter !== quarter)
    aloud.current = { quarter, said: words.readingNow(percent, view.report.found) };
  return (
    <div className="stack">
      <h3 id={id} ref={heading} tabIndex={-1}>
        {words.reading}
      </h3>
      <progress aria-labelledby={id} className="board-progress" max={1} value={view.share} />
      <p aria-hidden="true" className="figures">
        {words.readingNow(percent, view.report.found)}
      </p>
      <p role="status" className="for-readers">
        {aloud.current.said}
      </p>
      <div>
        <button type="button" className="button" onClick={() => store.getState().cancelIntake()}>
          {words.cancel}
        </button>
      </div>
      <p className="small soft">{words.cancelHelp}</p>
    </div>
  );
}

/** What came in and what did not, each with its number, its reason and what to do. */
export function BringInReport({ view }: { view: Extract<IntakeView, { name: 'done' }> }) {
  const { report, cancelled } = view;
  const store = useBoardStore();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const taken = Object.keys(report.taken).length > 0;
  const isNothing = report.found === 0 && !cancelled;
  return (
    <div className="notice board-report">
      <h3 ref={heading} tabIndex={-1} className="big">
        {cancelled
          ? words.cancelled
          : isNothing
            ? words.nothing
            : taken
              ? words.done
              : words.noneNew}
      </h3>
      {cancelled && <p>{words.cancelledBody}</p>}
      {isNothing ? <p>{words.nothingBody}</p> : <p>{words.found(report.found)}</p>}
      {taken && <Taken report={report} />}
      {report.left.length > 0 && (
        <>
          <h4>{words.left}</h4>
          <ul className="bullets">
            {report.left.map((left) => (
              <li key={left.why}>
                <LeftOne left={left} />
              </li>
            ))}
          </ul>
        </>
      )}
      <div>
        <button type="button" className="button" onClick={() => store.getState().dismissIntake()}>
          {words.close}
        </button>
      </div>
    </div>
  );
}

function Taken({ report }: { report: IntakeReport }) {
  const programmes = useBoardState((b) => b.programmes);
  return (
    <ul className="stack">
      {Object.entries(report.taken).map(([id, { answers, people, sessions }]) => {
        const title = programmes.find((each) => each.id === id)?.title ?? id;
        return (
          <li key={id} className="stack tight">
            <p>
              <strong>{title}</strong>
              <br />
              {words.takenLine(answers, people, sessions)}
            </p>
            <Link href={boardAt(id)} className="text-button">
              {words.toBoard(title)}
            </Link>
          </li>
        );
      })}
    </ul>
  );
}

function LeftOne({ left: { why, count, from } }: { left: Left }) {
  const { title, body } = leftWords(why, count);
  const names = from.filter((name) => name !== '');
  return (
    <>
      <strong>{title}</strong>. {body}
      {names.length > 0 && (
        <span className="small soft board-from">
          {words.from(names, why === 'file' && count > names.length)}
        </span>
      )}
    </>
  );
}
