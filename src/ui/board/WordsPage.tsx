import '../styles/board-words.css';
import { useState } from 'react';
import { useParams } from 'wouter';
import { dueWords } from '../../copy/board-due.ts';
import { wordsPage as words } from '../../copy/words-page.ts';
import type { Board, BoardInput, PersonRow } from '../../domain/board/board.ts';
import type { Due } from '../../domain/board/due.ts';
import { Screen } from '../parts/Screen.tsx';
import { boardAt } from './addresses.ts';
import { useBoard } from './board-context.tsx';
import { WordItem } from './WordItem.tsx';
import { WordSigns } from './WordSigns.tsx';
import { useShare } from './words-share.ts';

/** Who needs a word, with the reason and a draft of it: warning signs first. */
export function WordsPage() {
  const { id = '' } = useParams();
  const made = useBoard(id);
  return made === undefined ? null : <Words {...made} />;
}

const hasSign = ({ reasons }: Due): boolean => reasons.some(({ code }) => code === 'sign');

/** As many as are drawn before the leader asks for more. */
const SHOWN = 12;

interface WordsProps {
  readonly input: BoardInput;
  readonly board: Board;
  readonly due: readonly Due[];
}

function Words({ input, board, due }: WordsProps) {
  const { programme } = input;
  const rows = new Map(board.people.map((row) => [row.person, row]));
  const [signs, others] = [due.filter(hasSign), due.filter((each) => !hasSign(each))];
  return (
    <Screen
      title={words.title}
      sub={due.length === 0 ? programme.title : words.sub(due.length, programme.title)}
      back={{ href: boardAt(programme.id), name: words.back }}
    >
      {due.length === 0 ? (
        <Nobody hasHeard={input.heard.some(({ told }) => told !== undefined)} />
      ) : (
        <p>{words.lead}</p>
      )}
      {signs.length > 0 && (
        <section className="stack rule">
          <h2>{words.sign.title}</h2>
          <WordSigns />
          <List due={signs} rows={rows} input={input} />
        </section>
      )}
      {others.length > 0 && (
        <section className="stack rule">
          <h2 className={signs.length > 0 ? '' : 'for-readers'}>
            {signs.length > 0 ? words.others : words.noSign}
          </h2>
          <List due={others} rows={rows} input={input} />
        </section>
      )}
      {due.length > 0 && <p className="small soft">{dueWords.guidance}</p>}
    </Screen>
  );
}

function Nobody({ hasHeard }: { hasHeard: boolean }) {
  if (!hasHeard) return <p className="big">{words.nobodyTold}</p>;
  return (
    <div className="stack">
      <p className="big">{dueWords.none}</p>
      <p>{words.nobodyBody}</p>
    </div>
  );
}

interface ListProps {
  readonly due: readonly Due[];
  readonly rows: ReadonlyMap<string, PersonRow>;
  readonly input: BoardInput;
}

function List({ due, rows, input }: ListProps) {
  const share = useShare();
  const [shown, setShown] = useState(SHOWN);
  const left = due.length - shown;
  return (
    <>
      <ul className="words-due">
        {due.slice(0, shown).map((each) => {
          const row = rows.get(each.person);
          return (
            row !== undefined && (
              <li key={each.person}>
                <WordItem due={each} row={row} input={input} share={share} />
              </li>
            )
          );
        })}
      </ul>
      {left > 0 && (
        <div>
          <button type="button" className="button" onClick={() => setShown(shown + SHOWN)}>
            {words.more(Math.min(left, SHOWN))}
          </button>
        </div>
      )}
    </>
  );
}
