import { useState } from 'react';
import { keep as words } from '../../copy/keep.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { Dialog } from '../parts/Dialog.tsx';
import { useBoardState, useBoardStore } from './board-context.tsx';
import { KeepSaid } from './KeepSaid.tsx';
import { useJob } from './keep-job.ts';

/** When people go, and the leader's word against or for it. */
export function KeepTime({ input: { programme, setup } }: { input: BoardInput }) {
  const store = useBoardStore();
  const goesOn = useBoardState((b) => b.goesOn[programme.id]);
  const isKept = setup?.keep?.on === true;
  const [isAsking, setAsking] = useState(false);
  const job = useJob();
  const keep = (on: boolean) => {
    setAsking(false);
    void job.run(store.getState().keep(programme.id, on), '');
  };
  return (
    <section className="stack">
      <h2>{words.time}</h2>
      <p className="big">
        {isKept ? words.kept : goesOn === undefined ? words.nothing : goesWords(programme)(goesOn)}
      </p>
      <KeepSaid said={job.said} />
      {!isKept && goesOn !== undefined && (
        <>
          <div>
            <button type="button" className="button" onClick={() => keep(true)}>
              {words.keepOn}
            </button>
          </div>
          <p className="small soft">{words.keepOnHelp}</p>
        </>
      )}
      {isKept && (
        <div>
          <button type="button" className="button" onClick={() => setAsking(true)}>
            {words.letGo}
          </button>
        </div>
      )}
      {isAsking && (
        <Dialog name={words.letGoTitle} className="sheet" onLeave={() => setAsking(false)}>
          <div className="stack">
            <h1 tabIndex={-1}>{words.letGoTitle}</h1>
            <p>{words.letGoBody}</p>
            <div className="pair">
              <button type="button" className="button" onClick={() => keep(false)}>
                {words.letGoYes}
              </button>
              <button type="button" className="button primary" onClick={() => setAsking(false)}>
                {words.letGoNo}
              </button>
            </div>
          </div>
        </Dialog>
      )}
    </section>
  );
}

/** From what the ninety days are counted. */
function goesWords({ goal, startDate }: Programme): (date: string) => string {
  if (goal.date !== undefined) return words.goes;
  return startDate === undefined ? words.goesAfterLast : words.goesWithoutEvent;
}
