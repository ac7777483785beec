import { useId, useState } from 'react';
import { exchangeProblem } from '../../copy/exchange.ts';
import { join } from '../../copy/join.ts';
import { programmeProblem } from '../../copy/programme.ts';
import type { ProgrammeProblem } from '../../domain/programme/problem.ts';
import { useApp, useDevice, useReceived } from '../app-context.tsx';
import { PickFile } from './PickFile.tsx';
import { Scanner } from './Scanner.tsx';

/** The ways in which a programme comes: pasted, scanned or as a file, and what was wrong with it. */
export function JoinWays() {
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
