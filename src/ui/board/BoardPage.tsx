import { memo, useDeferredValue, useEffect, useMemo } from 'react';
import { Link, useParams } from 'wouter';
import { board as said } from '../../copy/board.ts';
import { boardPage as words } from '../../copy/board-page.ts';
import { day } from '../../copy/times.ts';
import type { Board, BoardInput } from '../../domain/board/board.ts';
import type { Due } from '../../domain/board/due.ts';
import { Screen } from '../parts/Screen.tsx';
import { boardPageAt, boardsAt, personAt } from './addresses.ts';
import { BoardEmpty } from './BoardEmpty.tsx';
import { BoardList } from './BoardList.tsx';
import { BoardLook } from './BoardLook.tsx';
import { Legend } from './BoardMarks.tsx';
import { BoardTable } from './BoardTable.tsx';
import { useBoard, useBoardState, useLastPerson, useLook } from './board-context.tsx';
import { type DueBy, type Look, sectionsOf } from './board-rows.ts';
import { Expect } from './GroupWeeks.tsx';
import { useWide } from './use-wide.ts';

/** People by weeks. */
export function BoardPage() {
  const { id = '' } = useParams();
  const made = useBoard(id);
  useWayBack(id);
  const rest = useAfterFirst();
  if (made === undefined) return null;
  const { input, board, due } = made;
  const { programme } = input;
  return (
    <Screen
      title={programme.title}
      sub={words.sub(board.week, programme.weeks.length)}
      back={{ href: boardsAt, name: words.back }}
    >
      <div className="board stack">
        <Ways programmeId={id} due={due.length} />
        {board.people.length === 0 ? (
          <BoardEmpty programme={programme} />
        ) : (
          <People input={input} board={board} due={due} />
        )}
        {rest && <Numbers input={input} board={board} />}
        {rest && <Goes programmeId={id} />}
      </div>
    </Screen>
  );
}

/**
 * False in a first picture of the page, which draws what a screen holds; all else follows right
 * behind it. Who comes back from a person finds their line: everything is there at once.
 */
function useAfterFirst(): boolean {
  const isBack = useLastPerson().size > 0;
  return useDeferredValue(true, isBack);
}

function Ways({ programmeId, due }: { programmeId: string; due: number }) {
  return (
    <nav className="board-ways" aria-label={words.pages}>
      <Link href={boardPageAt(programmeId, 'words')}>{words.words(due)}</Link>
      <Link href={boardPageAt(programmeId, 'next')}>{words.next}</Link>
      <Link href={boardPageAt(programmeId, 'list')}>{words.list}</Link>
      <Link href={boardPageAt(programmeId, 'keep')}>{words.keep}</Link>
    </nav>
  );
}

interface PeopleProps {
  readonly input: BoardInput;
  readonly board: Board;
  readonly due: readonly Due[];
}

function People({ input: { programme }, board, due }: PeopleProps) {
  const [look, change] = useLook(programme.id, board.week);
  const dueBy = useMemo(() => new Map(due.map((each) => [each.person, each])), [due]);
  // What is typed shows at once; the rows follow when there is time.
  const shown = useDeferredValue(look);
  return (
    <section className="stack rule">
      <BoardLook programme={programme} board={board} look={look} onChange={change} />
      <Rows programmeId={programme.id} board={board} due={dueBy} look={shown} />
      <p className="small">{`${said.compare} ${said.ordinary}`}</p>
    </section>
  );
}

interface RowsProps {
  readonly programmeId: string;
  readonly board: Board;
  readonly due: DueBy;
  readonly look: Look;
}

const Rows = memo(function Rows({ programmeId, board, due, look }: RowsProps) {
  const sections = useMemo(() => sectionsOf(board, due, look), [board, due, look]);
  const isWide = useWide();
  const found = sections.reduce((sum, { rows }) => sum + rows.length, 0);
  // How many are on the board stands in the folded choice of people already.
  const isSaid = !isWide && found === board.people.length;
  const rest = useAfterFirst();
  const drawn = rest ? sections : sections.slice(0, 1);
  return (
    <>
      {isWide && <Marks />}
      <p role="status" className={isSaid ? 'for-readers' : undefined}>
        {words.found(found, board.people.length)}
        {found === 0 && `. ${words.foundNone}`}
      </p>
      {isWide ? (
        <BoardTable
          programmeId={programmeId}
          board={board}
          groups={sections.length}
          sections={drawn}
          due={due}
          week={look.week}
          isFirst={!rest}
        />
      ) : (
        <BoardList
          programmeId={programmeId}
          groups={sections.length}
          sections={drawn}
          due={due}
          week={look.week}
        />
      )}
      {/* Every line of a phone's list says its marks in words. */}
      {!isWide && <Marks />}
    </>
  );
});

function Marks() {
  const isWide = useWide();
  return (
    <details open={isWide}>
      <summary>{words.legend}</summary>
      <Legend />
    </details>
  );
}

/** From a person's page back to their line, and not to the top of a long list. */
function useWayBack(programmeId: string): void {
  const last = useLastPerson();
  useEffect(() => {
    const person = last.get(programmeId);
    last.delete(programmeId);
    if (person === undefined) return;
    const href = `#${personAt(programmeId, person)}`;
    const links = document.querySelectorAll<HTMLElement>('.board a');
    // After the page itself has taken the reader to its top: this runs when its parts are there.
    [...links].find((link) => link.getAttribute('href') === href)?.focus();
  }, [last, programmeId]);
}

interface NumbersProps {
  readonly input: BoardInput;
  readonly board: Board;
}

/** How many are in each group: asked here, because only the leader can know. */
function Numbers({ input: { programme, setup }, board }: NumbersProps) {
  // Nobody is expected in a group that the programme has no more.
  const groups = board.groups.filter(({ id }) => programme.groups.some((each) => each.id === id));
  return (
    <details className="rule" open={setup === undefined}>
      <summary>{words.numbers}</summary>
      <div className="stack">
        <p className="small soft">{words.expectHelp}</p>
        <div className="board-numbers">
          {groups.map((group) => (
            <Expect
              key={group.id}
              programmeId={programme.id}
              group={group}
              count={setup?.expected[group.id]?.count ?? 0}
            />
          ))}
        </div>
      </div>
    </details>
  );
}

function Goes({ programmeId }: { programmeId: string }) {
  const goesOn = useBoardState((b) => b.goesOn[programmeId]);
  return (
    <p className="small rule">
      {goesOn === undefined ? words.stays : words.goes(day(goesOn))}{' '}
      <Link href={boardPageAt(programmeId, 'keep')}>{words.goesLink}</Link>
    </p>
  );
}
