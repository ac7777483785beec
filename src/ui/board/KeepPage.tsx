import '../styles/board-words.css';
import { useParams } from 'wouter';
import { keep as words } from '../../copy/keep.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { Screen } from '../parts/Screen.tsx';
import { boardAt } from './addresses.ts';
import { useBoard, useBoardStore } from './board-context.tsx';
import { KeepForget } from './KeepForget.tsx';
import { KeepHand } from './KeepHand.tsx';
import { KeepLock } from './KeepLock.tsx';
import { KeepOpen } from './KeepOpen.tsx';
import { KeepSaid } from './KeepSaid.tsx';
import { KeepTime } from './KeepTime.tsx';
import { useJob } from './keep-job.ts';

/** How long people stay, files of them, handing over, and forgetting one. */
export function KeepPage() {
  const { id = '' } = useParams();
  const input = useBoard(id)?.input;
  if (input === undefined) return null;
  const { programme } = input;
  return (
    <Screen
      title={words.title}
      sub={programme.title}
      back={{ href: boardAt(programme.id), name: words.back }}
    >
      <KeepTime input={input} />
      <KeepForget input={input} />
      <Files input={input} />
      <KeepLock />
      <KeepOpen />
      <KeepHand programme={programme} />
    </Screen>
  );
}

/** The board of this programme, open for anyone who has the file. */
function Files({ input: { programme } }: { input: BoardInput }) {
  const store = useBoardStore();
  const job = useJob();
  const save = (what: 'csv' | 'json') =>
    void job.run(store.getState().save(programme.id, what), words.given);
  return (
    <section className="stack rule">
      <h2>{words.files}</h2>
      <p>{words.filesBody}</p>
      <p className="notice">{words.filesCare}</p>
      <KeepSaid said={job.said} />
      <div className="row">
        <button type="button" className="button" onClick={() => save('csv')}>
          {words.csv}
        </button>
        <button type="button" className="button" onClick={() => save('json')}>
          {words.json}
        </button>
      </div>
    </section>
  );
}
