import { useState, useSyncExternalStore } from 'react';
import { Link, Redirect } from 'wouter';
import { common } from '../../copy/common.ts';
import { effortWords } from '../../copy/effort.ts';
import { running } from '../../copy/running.ts';
import { inWords, left } from '../../copy/times.ts';
import { ms } from '../../domain/units.ts';
import { useSession, useSettings } from '../app-context.tsx';
import { Controls } from '../parts/Controls.tsx';
import { GapDialog } from '../parts/GapDialog.tsx';
import {
  announcement,
  emsOf,
  headline,
  holdingLine,
  placeLine,
  thenLine,
  whereLine,
} from '../parts/moment.ts';
import { Screen, useArrival } from '../parts/Screen.tsx';
import { Marker, Strip } from '../parts/Strip.tsx';
import { isOver, isUnderWay } from '../parts/session-state.ts';
import { WrongDialog } from '../parts/WrongDialog.tsx';
import { Watching } from './Watching.tsx';
import '../styles/running.css';

/** The session while it runs: what to do now, for how long, and what comes then. */
export function Running() {
  const state = useSession((s) => s.view.state);
  const entryId = useSession((s) => s.entryId);
  const check = useSession((s) => s.view.purpose === 'pocket-check');
  const watchByChoice = useSettings((s) => s.mode === 'watch');
  const [watch, setWatch] = useState(watchByChoice);
  useArrival(running.title);

  if (check && isUnderWay(state)) return <Redirect to="/pocket" replace />;
  if (isOver(state))
    return entryId === undefined ? <Over /> : <Redirect to={`/felt/${entryId}`} replace />;
  if (!isUnderWay(state)) return <NoSession />;
  return (
    <div className="outdoors">
      {watch ? (
        <Watching onHear={() => setWatch(false)} />
      ) : (
        <Hearing onWatch={() => setWatch(true)} />
      )}
      <Announcement />
      <WrongDialog />
      <GapDialog />
    </div>
  );
}

function Announcement() {
  const text = useSession((s) => announcement(s.view));
  return (
    <p role="status" className="for-readers">
      {text}
    </p>
  );
}

function Hearing({ onWatch }: { onWatch: () => void }) {
  const state = useSession((s) => s.view.state);
  return (
    <main className="run" data-state={state}>
      <Where />
      <Now />
      <div className="run-ground">
        <Notices />
        <RunStrip />
        <Caption />
      </div>
      <Controls onWatch={onWatch} />
    </main>
  );
}

function Where() {
  const where = useSession((s) => whereLine(s.view));
  const at = useSession((s) => placeLine(s.view));
  return (
    <header className="run-where">
      <p>{where}</p>
      <p className="figures">{at}</p>
    </header>
  );
}

/** The great word, the countdown and what comes then; or why there is none. */
export function Now() {
  const state = useSession((s) => s.view.state);
  const word = useSession((s) => headline(s.view));
  const trouble = state === 'interrupted' || state === 'stalled';
  return (
    <section
      className="run-now"
      data-words={word.split(' ').length}
      style={{ '--ems': emsOf(word) } as React.CSSProperties}
    >
      <h1 className={trouble ? 'run-word trouble' : 'run-word'}>{word}</h1>
      {state === 'running' ? <Countdown /> : <Standing />}
    </section>
  );
}

function Countdown() {
  const time = useSession((s) => left(s.view.left));
  const then = useSession((s) => thenLine(s.view));
  const effort = useSession((s) => s.view.segment?.effort);
  const spoken = useSession((s) => inWords(ms(Math.ceil(s.view.left / 10_000) * 10_000)));
  return (
    <>
      <p className="run-left figures" role="timer" aria-label={`${spoken} ${running.left}`}>
        {time}
      </p>
      <p className="run-then figures">{then}</p>
      {effort !== undefined && (
        <p className="run-effort">
          {running.effort(Math.round(effort / 10), effortWords(effort / 10))}
        </p>
      )}
    </>
  );
}

function Standing() {
  const state = useSession((s) => s.view.state);
  const holding = useSession((s) => holdingLine(s.view));
  return (
    <p className="run-standing">
      {state === 'holding' && holding}
      {state === 'interrupted' && running.interruptedBody}
      {state === 'stalled' && running.stalledBody}
    </p>
  );
}

const low = window.matchMedia('(max-height: 720px)');
const watchLow = (changed: () => void): (() => void) => {
  low.addEventListener('change', changed);
  return () => low.removeEventListener('change', changed);
};

function RunStrip() {
  const height = useSyncExternalStore(watchLow, () => low.matches) ? 48 : 76;
  const timeline = useSession((s) => s.view.timeline);
  const share = useSession((s) => {
    const total = s.view.timeline?.total ?? 1;
    return Math.round((s.view.position / total) * 1000) / 1000;
  });
  if (timeline === undefined) return null;
  return (
    <div className="marked">
      <Strip timeline={timeline} height={height} />
      <Marker share={share} height={height - 4} />
    </div>
  );
}

/*
 * Not a live region: the voice says it at this moment, and a screen reader would talk over it.
 */
function Caption() {
  const caption = useSession((s) => (s.view.state === 'running' ? s.view.caption : ''));
  const note = useSession((s) => s.view.segment?.note);
  return (
    <p className="caption">
      {caption}
      {note !== undefined && <span className="soft"> {note}</span>}
    </p>
  );
}

export function Notices() {
  const unsaved = useSession((s) => s.view.unsaved);
  const silent = useSession((s) => s.view.medium === 'screen');
  return (
    <div role="status">
      {unsaved && <p className="notice small">{running.unsaved}</p>}
      {silent && !unsaved && <p className="small">{running.silent}</p>}
    </div>
  );
}

/** A session that ended but left no entry (storage refused): say so, and let go of it. */
function Over() {
  const word = useSession((s) => headline(s.view));
  const unsaved = useSession((s) => s.view.unsaved);
  return (
    <div className="page">
      <main className="stack">
        <h1>{word}</h1>
        <p>{unsaved ? running.unsaved : common.loading}</p>
      </main>
    </div>
  );
}

/** Also where the app wakes after it was killed: the page says what was cut off. */
function NoSession() {
  return (
    <Screen title={running.none.title}>
      <p>{running.none.body}</p>
      <div>
        <Link href="/" className="button primary">
          {running.none.go}
        </Link>
      </div>
    </Screen>
  );
}
