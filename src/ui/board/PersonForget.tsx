import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { calledOf } from '../../copy/board.ts';
import { personPage as words } from '../../copy/board-page.ts';
import type { BoardInput, PersonRow } from '../../domain/board/board.ts';
import { boardAt } from './addresses.ts';
import { useBoardStore } from './board-context.tsx';

interface ForgetProps {
  readonly input: BoardInput;
  readonly row: PersonRow;
}

/** Everything that is known of a person, wholly gone after one question. */
export function PersonForget({ input, row }: ForgetProps) {
  const [isAsking, setAsking] = useState(false);
  const name = calledOf(row);
  return (
    <section className="stack rule">
      <h2>{words.forget}</h2>
      {isAsking ? (
        <Ask input={input} row={row} onLeave={() => setAsking(false)} />
      ) : (
        <>
          <p>{words.forgetBody}</p>
          <div>
            <button type="button" className="button" onClick={() => setAsking(true)}>
              {words.forgetGo(name)}
            </button>
          </div>
        </>
      )}
    </section>
  );
}

function Ask({ input, row, onLeave }: ForgetProps & { onLeave: () => void }) {
  const store = useBoardStore();
  const [, go] = useLocation();
  const [hasFailed, setFailed] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const { id } = input.programme;
  const sessions = row.cells.flatMap((cell) => cell.sessions);
  const ticks = sessions.filter(({ there }) => there).length;
  const notes = sessions.filter(({ note }) => note !== undefined).length;
  const forget = async () => {
    const gone = await store.getState().forget(id, row.person);
    if (gone.ok) go(boardAt(id), { replace: true });
    else setFailed(true);
  };
  return (
    <div className="notice">
      <h3 ref={heading} tabIndex={-1}>
        {words.forgetTitle(calledOf(row))}
      </h3>
      <ul className="bullets">
        {words.forgetWhat(sessions.length, ticks, notes).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p role="alert">{hasFailed && words.failed}</p>
      <div className="row">
        <button type="button" className="button" onClick={() => void forget()}>
          {words.forgetYes}
        </button>
        <button type="button" className="button" onClick={onLeave}>
          {words.forgetNo}
        </button>
      </div>
    </div>
  );
}
