import { effortWords } from '../../copy/effort.ts';
import { running } from '../../copy/running.ts';
import { inWords, left } from '../../copy/times.ts';
import { ms } from '../../domain/units.ts';
import { useSession } from '../app-context.tsx';
import { emsOf, headline, holdingLine, thenLine } from './moment.ts';

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
