import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { common } from '../../copy/common.ts';
import { pocket } from '../../copy/pocket.ts';
import { running as words } from '../../copy/running.ts';
import { left } from '../../copy/times.ts';
import { ms } from '../../domain/units.ts';
import { useApp, usePack, useSession, useSettings } from '../app-context.tsx';
import { cameFrom } from '../parts/came-from.ts';
import { PocketOutcome } from '../parts/PocketOutcome.tsx';
import { Screen } from '../parts/Screen.tsx';
import { isUnderWay } from '../parts/session-state.ts';

/** Two minutes in a locked pocket, then what the phone did and what to change. */
export function Pocket() {
  const app = useApp();
  const running = useSession((s) => s.view.purpose === 'pocket-check' && isUnderWay(s.view.state));
  const record = useSettings((s) => s.pocketCheck);
  const packReady = usePack((p) => p.pack.name === 'ready');
  const [again, setAgain] = useState(false);
  const explain = record === undefined || again;
  const from = cameFrom('/settings');

  // After a stop half-way; a check that was heard to its end is left alone for its last words.
  const stopped = useSession(
    (s) => s.view.purpose === 'pocket-check' && s.view.state === 'ended-early',
  );
  useEffect(() => {
    if (packReady && (explain || stopped)) void app.session.getState().preparePocketCheck();
  }, [app, packReady, explain, stopped]);
  useEffect(() => {
    if (record !== undefined) setAgain(false);
  }, [record]);
  useEffect(
    () => () => {
      const { view, end, close } = app.session.getState();
      if (view.purpose !== 'pocket-check') return;
      if (isUnderWay(view.state)) end();
      close();
    },
    [app],
  );

  const title = running ? pocket.runningTitle : explain ? pocket.title : pocket.resultTitle;
  const foot = running ? (
    <Stop />
  ) : explain ? (
    <Begin from={from} />
  ) : (
    <After from={from} onAgain={() => setAgain(true)} />
  );
  return (
    <Screen key={title} title={title} back={{ href: from, name: common.back }} foot={foot}>
      {running ? <UnderWay /> : explain ? <Explain /> : <PocketOutcome record={record} />}
    </Screen>
  );
}

function Explain() {
  return (
    <>
      <p>{pocket.lead}</p>
      <ol className="steps">
        {pocket.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </>
  );
}

function UnderWay() {
  const time = useSession((s) => left(ms((s.view.timeline?.total ?? 0) - s.view.position)));
  const caption = useSession((s) => s.view.caption);
  const late = useSession((s) => s.view.late);
  return (
    <>
      <p className="big" role="status">
        {late ? words.lateKeep : pocket.runningBody}
      </p>
      <p className="huge figures" role="timer">
        {time} <span className="soft">{pocket.left}</span>
      </p>
      <p className="caption">{caption}</p>
    </>
  );
}

function Stop() {
  const session = useApp().session;
  return (
    <button type="button" className="button wide" onClick={() => session.getState().end()}>
      {pocket.stop}
    </button>
  );
}

function Begin({ from }: { from: string }) {
  const app = useApp();
  const ready = useSession((s) => s.view.purpose === 'pocket-check' && s.view.state === 'ready');
  const packReady = usePack((p) => p.pack.name === 'ready');
  return (
    <>
      {!packReady && <p className="small">{pocket.needVoice}</p>}
      <button
        type="button"
        className="button primary wide"
        aria-disabled={!ready}
        onClick={() => {
          if (ready) app.session.getState().start();
        }}
      >
        {pocket.start}
      </button>
      {from.startsWith('/p/') && (
        <Link
          href={from}
          className="text-button center"
          onClick={() => void app.settings.getState().change({ pocketCheckSkipped: true })}
        >
          {pocket.skip}
        </Link>
      )}
    </>
  );
}

function After({ from, onAgain }: { from: string; onAgain: () => void }) {
  return (
    <>
      <Link href={from} className="button primary wide">
        {from.startsWith('/p/') ? pocket.go : pocket.settings}
      </Link>
      <button type="button" className="text-button center" onClick={onAgain}>
        {pocket.again}
      </button>
    </>
  );
}
