import { useState } from 'react';
import { Link, Redirect } from 'wouter';
import { common } from '../../copy/common.ts';
import { running } from '../../copy/running.ts';
import { useSession, useSettings } from '../app-context.tsx';
import { AgreedStartWait } from '../parts/AgreedStartWait.tsx';
import { Controls } from '../parts/Controls.tsx';
import { GapDialog } from '../parts/GapDialog.tsx';
import { announcement, headline, placeLine, whereLine } from '../parts/moment.ts';
import { Notices } from '../parts/Notices.tsx';
import { Now } from '../parts/Now.tsx';
import { RunStrip } from '../parts/RunStrip.tsx';
import { Screen, useArrival } from '../parts/Screen.tsx';
import { isOver, isUnderWay, isWaiting } from '../parts/session-state.ts';
import { WrongDialog } from '../parts/WrongDialog.tsx';
import { leadingAt } from '../workshop/addresses.ts';
import { Watching } from './Watching.tsx';
import '../styles/running.css';

/** The session while it runs: what to do now, for how long, and what comes then. */
export function Running() {
  const state = useSession((s) => s.view.state);
  const entryId = useSession((s) => s.entryId);
  const check = useSession((s) => s.view.purpose === 'pocket-check');
  const led = useSession((s) => s.view.lead?.key);
  const watchByChoice = useSettings((s) => s.mode === 'watch');
  const [watch, setWatch] = useState(watchByChoice);
  useArrival(running.title);

  if (check && isUnderWay(state)) return <Redirect to="/pocket" replace />;
  if (led !== undefined && isUnderWay(state)) return <Redirect to={leadingAt(led)} replace />;
  if (isOver(state))
    return entryId === undefined ? <Over /> : <Redirect to={`/felt/${entryId}`} replace />;
  if (!isUnderWay(state)) return <NoSession />;
  if (isWaiting(state))
    return (
      <div className="outdoors">
        <AgreedStartWait />
      </div>
    );
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
  const top = useArrival<HTMLElement>(running.title);
  return (
    <main className="run" data-state={state} ref={top} tabIndex={-1}>
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
