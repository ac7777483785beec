import { useEffect } from 'react';
import { Link, useParams } from 'wouter';
import { calledOf, tellingSentence } from '../../copy/board.ts';
import { DUE_TITLE, reasonSentence } from '../../copy/board-due.ts';
import { personPage as words } from '../../copy/board-page.ts';
import { cameAt } from '../../copy/came.ts';
import type { BoardInput, PersonRow } from '../../domain/board/board.ts';
import type { Due } from '../../domain/board/due.ts';
import { useApp } from '../app-context.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';
import { boardAt } from './addresses.ts';
import { useBoard, useLastPerson } from './board-context.tsx';
import { PersonFelt } from './PersonFelt.tsx';
import { PersonForget } from './PersonForget.tsx';
import { PersonOwn, PersonSame } from './PersonOwn.tsx';
import { PersonWeeks } from './PersonWeeks.tsx';
import { WordMessage } from './WordItem.tsx';
import { useShare } from './words-share.ts';

/** One person: what they did week by week, how it felt, and what the leader may do. */
export function PersonPage() {
  const { id = '', person = '' } = useParams();
  const made = useBoard(id);
  const last = useLastPerson();
  useEffect(() => void last.set(id, person), [last, id, person]);
  const row = made?.board.people.find((each) => each.person === person);
  if (made === undefined) return null;
  if (row === undefined) return <NotHere />;
  const { input, board } = made;
  const { programme } = input;
  const due = made.due.find((each) => each.person === person);
  const group = programme.groups.find((each) => each.id === row.group)?.name ?? row.group;
  return (
    <Screen
      title={calledOf(row)}
      sub={words.sub(group)}
      back={{ href: boardAt(id), name: words.back }}
    >
      <Standing row={row} />
      {due !== undefined && <NeedsWord input={input} row={row} due={due} />}
      <PersonFelt sessions={[...row.cells.flatMap((cell) => cell.sessions), ...row.elsewhere]} />
      <PersonWeeks programme={programme} row={row} />
      <PersonOwn key={`${row.name} ${row.group}`} input={input} row={row} />
      <PersonSame input={input} row={row} people={board.people} />
      <PersonForget input={input} person={person} />
    </Screen>
  );
}

function Standing({ row }: { row: PersonRow }) {
  const now = useApp().clock.now();
  return <p>{tellingSentence(row, row.heardAt === undefined ? '' : cameAt(row.heardAt, now))}</p>;
}

/** Why they need a word, gravest first; a warning sign with what to do. */
function NeedsWord({ input, row, due }: { input: BoardInput; row: PersonRow; due: Due }) {
  const { programme } = input;
  const { reasons } = due;
  const share = useShare();
  const isSign = reasons.some(({ code }) => code === 'sign');
  const isNiggle = reasons.some(({ code }) => code === 'niggle' || code === 'niggle-again');
  return (
    <section className={isSign ? 'notice alarm' : 'notice'}>
      <h2>{words.due}</h2>
      <ul className="bullets">
        {reasons.map((reason) => (
          <li key={reason.code}>
            <strong>{DUE_TITLE[reason.code]}</strong>: {reasonSentence(reason, programme.groups)}
          </li>
        ))}
      </ul>
      {isSign && (
        <>
          <p>{words.signBody}</p>
          <p>
            <Link href="/cautions">{words.toCautions}</Link>
          </p>
        </>
      )}
      {isNiggle && <p>{words.niggleBody}</p>}
      <WordMessage due={due} row={row} input={input} share={share} />
    </section>
  );
}
