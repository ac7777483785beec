import { useEffect, useState } from 'react';
import { running, watching } from '../../copy/running.ts';
import { left } from '../../copy/times.ts';
import { useApp, useSession } from '../app-context.tsx';
import { Controls } from '../parts/Controls.tsx';
import { fillOf, Hatches } from '../parts/Hatches.tsx';
import { useKeptFocus } from '../parts/KeptFocus.tsx';
import { emsOf, headline, thenLine } from '../parts/moment.ts';
import { Notices } from '../parts/Notices.tsx';
import { Now } from '../parts/Now.tsx';
import { PressLong } from '../parts/PressLong.tsx';
import { useArrival } from '../parts/Screen.tsx';
import { textureOf } from '../parts/strip-shape.ts';
import { shapeKey, watchShape } from '../parts/watch-shape.ts';
import '../styles/watching.css';

/** The session for someone who watches: the whole screen is the signal. */
export function Watching({ onHear }: { onHear: () => void }) {
  const shape = useSession((s) => shapeKey(watchShape(s.view)));
  const state = useSession((s) => s.view.state);
  const session = useApp().session;
  useEffect(() => {
    session.getState().watch(true);
    return () => session.getState().watch(false);
  }, [session]);
  const top = useArrival<HTMLElement>(running.title);
  return (
    <main className="watch" data-shape={shape} data-state={state} ref={top} tabIndex={-1}>
      <div className="watch-stage">
        <Backdrop shape={shape} />
        <div className="watch-plate">
          {shape === 'ground' ? <Now /> : shape.startsWith('count-') ? <Count /> : <Change />}
        </div>
      </div>
      <Guarded onHear={onHear} />
    </main>
  );
}

function Count() {
  const word = useSession((s) => headline(s.view));
  const seconds = useSession((s) => Math.ceil(s.view.left / 1000));
  const then = useSession((s) => thenLine(s.view));
  return (
    <>
      <h1 className="for-readers">{word}</h1>
      <p className="watch-count figures" role="timer">
        {seconds}
      </p>
      <p className="run-then figures">{then}</p>
    </>
  );
}

function Change() {
  const word = useSession((s) => headline(s.view));
  const time = useSession((s) => left(s.view.left));
  const then = useSession((s) => thenLine(s.view));
  return (
    <section className="run-now" style={{ '--ems': emsOf(word) } as React.CSSProperties}>
      <h1 className="run-word">{word}</h1>
      <p className="run-then figures">
        <span role="timer">{time}</span>, {then}
      </p>
    </section>
  );
}

/** A picture per shape, from edge to edge: told apart by form, never by colour alone. */
function Backdrop({ shape }: { shape: string }) {
  const activity = useSession((s) => s.view.segment?.activity ?? 'stand');
  const effort = useSession((s) => s.view.segment?.effort ?? 0);
  if (shape === 'ground') {
    const top = 100 - Math.max(8, effort);
    return (
      <svg className="backdrop" aria-hidden="true">
        <Hatches id="watch" scale={4} />
        <rect
          y={`${top}%`}
          width="100%"
          height={`${100 - top}%`}
          fill={fillOf('watch', textureOf(activity))}
        />
        <line x1="0" x2="100%" y1={`${top}%`} y2={`${top}%`} className="ridge" />
      </svg>
    );
  }
  return (
    <svg className="backdrop" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
      {shape === 'harder' && <path d="M-10 100L50 2L110 100Z" fill="currentColor" />}
      {shape === 'easier' && <path d="M-10 0L50 98L110 0Z" fill="currentColor" />}
      {(shape === 'same' || shape === 'start') && <path d="M0 20H100V80H0Z" fill="currentColor" />}
      {shape.startsWith('count-') && <Bars count={Number(shape.slice(-1))} />}
    </svg>
  );
}

/** One pair of bars for each second that is left, from the edges inwards. */
function Bars({ count }: { count: number }) {
  return [0, 9, 18].slice(0, count).map((inset) => (
    <g key={inset} fill="currentColor">
      <rect x="0" width="100" y={inset} height="6" />
      <rect x="0" width="100" y={94 - inset} height="6" />
    </g>
  ));
}

/** Controls come back out of reach after this long without a touch. */
const GUARD_AGAIN_MS = 20_000;

function Guarded({ onHear }: { onHear: () => void }) {
  const session = useApp().session;
  const moving = useSession((s) => s.view.state === 'running');
  const awake = useSession((s) => s.view.awake);
  const [open, setOpen] = useState(false);
  const [asked, setAsked] = useState(false);
  const shown = open || !moving;
  const group = useKeptFocus<HTMLDivElement>();

  useEffect(() => {
    if (!open) return;
    const timer = setTimeout(() => setOpen(false), GUARD_AGAIN_MS);
    return () => clearTimeout(timer);
  }, [open]);

  const show = () => {
    setAsked(false);
    setOpen(true);
  };
  if (shown)
    return (
      <div ref={group} className="watch-foot">
        <Notices />
        <Controls onHear={onHear} />
        {moving && (
          <button type="button" className="text-button center" onClick={() => setOpen(false)}>
            {watching.guardBack}
          </button>
        )}
      </div>
    );
  return (
    <div ref={group} className="watch-foot">
      {!awake && <p className="small">{running.notAwake}</p>}
      {asked && (
        <button type="button" className="button wide" onClick={show}>
          {watching.guardOpen}
        </button>
      )}
      <div className="pair">
        <PressLong
          className="button guard"
          name={watching.guard}
          how={watching.guardHow}
          onLong={show}
          onShort={() => setAsked(true)}
        />
        <button
          type="button"
          className="button wrong"
          onClick={() => session.getState().somethingIsWrong()}
        >
          {running.wrong}
        </button>
      </div>
    </div>
  );
}
