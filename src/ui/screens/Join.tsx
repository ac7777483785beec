import { useEffect, useId, useRef, useState } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import type { Acceptance, Preview } from '../../app/exchange-contract.ts';
import { cameLine } from '../../copy/came.ts';
import { common } from '../../copy/common.ts';
import { exchangeProblem } from '../../copy/exchange.ts';
import { choiceSaid, join, verdictSaid } from '../../copy/join.ts';
import { programmeProblem } from '../../copy/programme.ts';
import type { ProgrammeProblem } from '../../domain/programme/problem.ts';
import { useApp, useDevice, useReceived } from '../app-context.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { Scanner } from '../parts/Scanner.tsx';
import { Screen } from '../parts/Screen.tsx';

/** A programme that came from somebody: opened, looked at, and kept only when the person says so. */
export function Join() {
  const { code } = useParams<{ code?: string }>();
  const store = useApp().received;
  const state = useReceived((r) => r.received);
  const [, go] = useLocation();

  useEffect(() => {
    if (code === undefined || code === '') return;
    // Out of the address, so that it is neither kept in the history nor shown to others.
    go('/join', { replace: true });
    void store.getState().open(`#/join/${code}`);
  }, [code, store, go]);

  useEffect(() => {
    if (state.name !== 'kept') return;
    store.getState().dismiss();
    go(`/p/${state.id}`, { replace: true });
  }, [state, store, go]);

  // Parts stay: the next one may come as a link of its own.
  useEffect(
    () => () => {
      if (store.getState().received.name !== 'parts') store.getState().dismiss();
    },
    [store],
  );

  return (
    <Screen
      title={state.name === 'preview' ? state.preview.programme.title : join.title}
      sub={join.sub}
      back={{ href: '/start', name: common.back }}
    >
      <div role="status">{state.name === 'reading' && <p>{join.reading}</p>}</div>
      {state.name === 'preview' ? <Look preview={state.preview} /> : <Ways />}
    </Screen>
  );
}

function Ways() {
  const store = useApp().received;
  const state = useReceived((r) => r.received);
  const ios = useDevice((d) => d.platform === 'ios');
  const [text, setText] = useState('');
  const [scanning, setScanning] = useState(false);
  const id = useId();
  return (
    <>
      {/* One box: two that are mostly empty would hold the space of two. */}
      <div>
        <div role="alert">
          {state.name === 'refused' && (
            <div className="notice">
              <p>
                <strong>{join.refused}</strong>
              </p>
              <p>{exchangeProblem(state.problem)}</p>
              <OtherReasons problems={state.problem.problems?.slice(1) ?? []} />
            </div>
          )}
        </div>
        <div role="status">
          {state.name === 'parts' && (
            <div className="notice">
              <p>
                <strong>{join.parts(state.have.length, state.of)}</strong>
              </p>
              <p>{join.partsHave(state.have)}</p>
            </div>
          )}
        </div>
      </div>
      {state.name === 'parts' && (
        <div>
          <button type="button" className="button" onClick={() => store.getState().dismiss()}>
            {join.again}
          </button>
        </div>
      )}
      {ios && <p className="notice">{join.ios}</p>}
      <section className="stack rule">
        <h2>{join.pasteTitle}</h2>
        <form
          className="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void store.getState().open(text);
          }}
        >
          <div className="field">
            <label htmlFor={id}>{join.paste}</label>
            <textarea
              id={id}
              value={text}
              rows={4}
              spellCheck={false}
              autoComplete="off"
              onChange={(event) => setText(event.target.value)}
            />
          </div>
          <div>
            <button type="submit" className="button primary">
              {join.pasteGo}
            </button>
          </div>
        </form>
      </section>
      <section className="stack rule">
        <h2>{join.codeTitle}</h2>
        {scanning ? (
          <Scanner
            hint={join.scanning}
            stop={join.stop}
            scan={(video) => store.getState().scan(video)}
            said={exchangeProblem}
            onStop={() => setScanning(false)}
          />
        ) : (
          <div>
            <button type="button" className="button" onClick={() => setScanning(true)}>
              {join.scan}
            </button>
          </div>
        )}
        <p className="small soft">{join.fileHelp}</p>
        <PickFile
          name={join.file}
          accept="image/*,.txt,.json,application/json,text/plain"
          onPick={(file) => void store.getState().openFile(file)}
        />
      </section>
    </>
  );
}

/** How many more are told at once: the first ones usually explain the rest. */
const MORE_SHOWN = 4;

function OtherReasons({ problems }: { problems: readonly ProgrammeProblem[] }) {
  const rest = problems.length - MORE_SHOWN;
  return (
    <>
      {problems.length > 0 && (
        <ul className="bullets">
          {problems.slice(0, MORE_SHOWN).map((problem) => (
            <li key={programmeProblem(problem)}>{programmeProblem(problem)}</li>
          ))}
        </ul>
      )}
      {rest > 0 && <p>{join.more(rest)}</p>}
    </>
  );
}

function Look({ preview }: { preview: Preview }) {
  const { programme, verdict, stored, digits, groupGone, signed } = preview;
  const { received: store, clock } = useApp();
  const heading = useRef<HTMLHeadingElement>(null);
  const said = verdictSaid(verdict, programme.revision, programme.leader.name);
  useEffect(() => heading.current?.focus(), []);
  return (
    <>
      <section className="notice">
        <h2 ref={heading} tabIndex={-1}>
          {said.title}
        </h2>
        <p>{said.body}</p>
        {digits !== undefined && (
          <p>
            {join.digits}: <strong className="big figures">{digits}</strong>
          </p>
        )}
        {groupGone !== undefined && <p>{join.groupGone(groupGone)}</p>}
      </section>
      <dl className="pairs">
        {factsOf(preview, clock.now()).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p>{signed ? join.signed : join.unsigned}</p>
      <Choose preview={preview} />
      <div className="row">
        {stored !== undefined && (
          <Link href={`/p/${stored.id}`} className="text-button">
            {join.toIt}
          </Link>
        )}
        <button type="button" className="text-button" onClick={() => store.getState().dismiss()}>
          {join.leave}
        </button>
      </div>
    </>
  );
}

function factsOf(
  { programme, stored }: Preview,
  now: number,
): readonly (readonly [string, string])[] {
  return [
    [join.leader, programme.leader.name],
    [join.weeks, String(programme.weeks.length)],
    [join.groups, programme.groups.map(({ name }) => name).join(', ')],
    [join.revision, String(programme.revision)],
    ...(programme.change === undefined ? [] : [[join.changed, programme.change] as const]),
    ...(stored === undefined ? [] : [[join.here, cameLine(stored, now)] as const]),
  ];
}

function Choose({ preview: { choices, verdict, programme } }: { preview: Preview }) {
  const store = useApp().received;
  const [failed, setFailed] = useState(false);
  const take = async (choice: Acceptance) => {
    const kept = await store.getState().accept(choice);
    setFailed(!kept.ok);
  };
  return (
    <>
      <div role="alert">{failed && <p className="notice">{join.notKept}</p>}</div>
      {choices.map((choice, n) => {
        const { name, help } = choiceSaid(choice, verdict.kind, programme.revision);
        const isUsual = n === 0 && choice === 'keep';
        return (
          <div key={choice} className="stack tight">
            <div>
              <button
                type="button"
                className={isUsual ? 'button primary' : 'button'}
                onClick={() => void take(choice)}
              >
                {name}
              </button>
            </div>
            <p className="small soft">{help}</p>
          </div>
        );
      })}
    </>
  );
}
