import { useEffect, useRef, useState } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import { boardPage, boards as words } from '../../copy/board-page.ts';
import { bringIn, intakeRefused } from '../../copy/bring-in.ts';
import { common } from '../../copy/common.ts';
import type { Board } from '../../domain/board/board.ts';
import { ANSWER } from '../../domain/exchange/link.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { Screen } from '../parts/Screen.tsx';
import { boardAt, boardPageAt } from './addresses.ts';
import { BringIn } from './BringIn.tsx';
import { BringInKeys } from './BringInKeys.tsx';
import { useBoard, useBoardState, useBoardStore } from './board-context.tsx';

/** The leader's boards, and bringing answers in. */
export function Boards() {
  const isByLink = useAnswerLink();
  const publishing = useApp().publishing;
  useEffect(() => void publishing.getState().load(), [publishing]);
  const keys = usePublishing((p) => p.keys.name);
  const intake = useBoardState((b) => b.intake);
  const isRefused = intake.name === 'refused';
  // What was refused before the keys came is told no more.
  const needsKeys = keys === 'none' || (keys !== 'there' && isRefused && intake.why === 'no-keys');
  const isForLeader = needsKeys && isByLink;
  return (
    <Screen
      // A title that changes is arrived at anew.
      key={String(isForLeader)}
      title={isForLeader ? bringIn.forLeader.title : words.title}
      sub={isForLeader ? undefined : words.sub}
      back={
        isForLeader ? { href: '/start', name: common.back } : { href: '/lead', name: words.back }
      }
    >
      <div role="alert">
        {isRefused && intake.why !== 'no-keys' && (
          <p className="notice">{intakeRefused(intake.why)}</p>
        )}
      </div>
      <Unread />
      <Went />
      {needsKeys ? <BringInKeys byLink={isByLink} /> : <BringIn />}
      {!isForLeader && <List />}
    </Screen>
  );
}

/** Opens what is in the address, and takes it out of there. @returns whether somebody came by a link */
function useAnswerLink(): boolean {
  const { code } = useParams<{ code?: string }>();
  const store = useBoardStore();
  const [, go] = useLocation();
  const [isByLink, setByLink] = useState(false);
  const link = useRef<string>(undefined);
  useEffect(() => {
    if (code === undefined || code === '') return;
    setByLink(true);
    // Out of the address, so that it is neither kept in the history nor shown to others.
    go('/answer', { replace: true });
    link.current = `${ANSWER}${code}`;
    void store.getState().bringIn([{ name: '', content: link.current }]);
  }, [code, store, go]);
  useKeysCame(() => {
    store.getState().dismissIntake();
    // The address does not have it any more.
    if (link.current !== undefined)
      void store.getState().bringIn([{ name: '', content: link.current }]);
  });
  return isByLink;
}

/** Calls back when keys are taken over while the page is open. */
function useKeysCame(onCame: () => void): void {
  const keys = usePublishing((p) => p.keys.name);
  const before = useRef(keys);
  useEffect(() => {
    if (before.current === 'none' && keys === 'there') onCame();
    before.current = keys;
  });
}

function Unread() {
  const store = useBoardStore();
  const problem = useBoardState((b) => b.problem);
  return (
    <div role="alert">
      {problem !== undefined && (
        <div className="notice">
          <p>{words.unread}</p>
          <div>
            <button type="button" className="button" onClick={() => void store.getState().load()}>
              {words.again}
            </button>
          </div>
        </div>
      )}
    </div>
  );
}

/** What was let go of just now because its time was over. */
function Went() {
  const went = useBoardState((b) => b.went);
  const programmes = useBoardState((b) => b.programmes);
  return (
    <div role="status">
      {went.map((id) => (
        <p className="notice" key={id}>
          {words.went(programmes.find((each) => each.id === id)?.title ?? id)}
        </p>
      ))}
    </div>
  );
}

function List() {
  const ready = useBoardState((b) => b.ready);
  const programmes = useBoardState((b) => b.programmes);
  if (!ready) return null;
  return (
    <section className="stack rule">
      <h2>{words.mine}</h2>
      {programmes.length === 0 ? (
        <>
          <p>{words.none}</p>
          <div>
            <Link href="/lead" className="button">
              {words.toLead}
            </Link>
          </div>
        </>
      ) : (
        <ul className="lines">
          {programmes.map((programme) => (
            <li key={programme.id}>
              <OneBoard programme={programme} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** From how many something is known of this week, and how many there are. */
function heardNow({ groups, week }: Board): { heard: number; of: number } {
  const now = groups.flatMap(({ weeks }) => weeks[week - 1] ?? []);
  return {
    heard: now.reduce((sum, { heard }) => sum + heard, 0),
    of: now.reduce((sum, { of }) => sum + of, 0),
  };
}

function OneBoard({ programme: { id, title } }: { programme: Programme }) {
  const made = useBoard(id);
  if (made === undefined) return null;
  const { board, due } = made;
  const { heard, of } = heardNow(board);
  return (
    <article className="stack tight">
      <h3 className="big">{title}</h3>
      <p>{board.people.length === 0 ? words.nothingYet : words.heard(heard, of)}</p>
      {due.length > 0 && (
        <p>
          <Link href={boardPageAt(id, 'words')}>{words.due(due.length)}</Link>
        </p>
      )}
      <p className="small soft">{boardPage.sub(board.week, board.groups[0]?.weeks.length ?? 0)}</p>
      <div className="row">
        <Link href={boardAt(id)} className="button">
          {words.open(title)}
        </Link>
      </div>
    </article>
  );
}
