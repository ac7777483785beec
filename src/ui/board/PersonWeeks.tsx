import { memo } from 'react';
import { cellWords, gapWords, numberText } from '../../copy/board.ts';
import { boardPage, personPage as words } from '../../copy/board-page.ts';
import { day, minutes } from '../../copy/times.ts';
import { weekDates } from '../../copy/week-dates.ts';
import { PLACE, SEVERITY, SIDE, stripInWords } from '../../copy/words.ts';
import type { BoardCell, BoardSession, PersonRow } from '../../domain/board/board.ts';
import type { Niggle } from '../../domain/log/entry.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { longestSession, sessionsOf, timelineOf } from '../parts/plans.ts';
import { Strip } from '../parts/Strip.tsx';
import { CellMarks, Flags } from './BoardMarks.tsx';

interface WeeksProps {
  readonly programme: Programme;
  readonly row: PersonRow;
}

/** A person's weeks, the latest first, with every session as it was told. */
export function PersonWeeks({ programme, row: { cells, group, elsewhere } }: WeeksProps) {
  const begun = cells.filter(({ state }) => state !== 'ahead').reverse();
  return (
    <section className="stack rule">
      <h2>{words.weeks}</h2>
      <p className="small soft">{begun.length === 0 ? words.noWeeks : words.stripHelp}</p>
      <ul className="lines">
        {elsewhere.length > 0 && (
          <li className="stack">
            <h3>{words.elsewhere}</h3>
            <Sessions programme={programme} sessions={elsewhere} group={group} />
          </li>
        )}
        {begun.map((cell) => (
          <li key={cell.week}>
            <Week programme={programme} cell={cell} group={group} />
          </li>
        ))}
      </ul>
    </section>
  );
}

const Week = memo(function Week({
  programme,
  cell,
  group,
}: {
  programme: Programme;
  cell: BoardCell;
  group: string;
}) {
  const monday = programme.startDate === undefined ? undefined : dayOf(programme.startDate);
  return (
    <article className="stack">
      <h3>
        {boardPage.weekHead(cell.week)}{' '}
        {monday !== undefined && (
          <span className="soft board-dates">{weekDates(monday + 7 * (cell.week - 1))}</span>
        )}
      </h3>
      <div className="stack tight">
        <span className="board-marks" aria-hidden="true">
          <CellMarks cell={cell} />
        </span>
        <p>{cellWords(cell)}</p>
      </div>
      <Sessions programme={programme} sessions={cell.sessions} group={group} />
    </article>
  );
});

interface SessionsProps {
  readonly programme: Programme;
  readonly sessions: readonly BoardSession[];
  readonly group: string;
}

const Sessions = ({ sessions, ...rest }: SessionsProps) =>
  sessions.map((session) => (
    <Session
      key={session.id ?? `${session.localDate} ${session.session}`}
      session={session}
      {...rest}
    />
  ));

function niggleWords({ place, side, severity }: Niggle): string {
  const where = side === undefined ? PLACE[place] : `${PLACE[place]}, ${SIDE[side].toLowerCase()}`;
  return severity === undefined ? where : `${where}: ${SEVERITY[severity]}`;
}

/** One session: how much of its landscape, how it felt, and what they said. */
function Session({
  programme,
  session,
  group,
}: Omit<SessionsProps, 'sessions'> & { session: BoardSession }) {
  const { localDate, felt, target, niggle, sign, note, id } = session;
  const other =
    session.group === group
      ? []
      : [
          words.otherGroup(
            programme.groups.find((each) => each.id === session.group)?.name ?? session.group,
          ),
        ];
  return (
    <div className="board-session">
      <p>
        <strong>{day(localDate)}</strong> {[words.session(session.session), ...other].join(', ')}
      </p>
      <Landscape programme={programme} session={session} />
      <p className="small">{id === undefined ? words.thereOnly : howMuch(session).join(', ')}</p>
      {id !== undefined && (
        <p>
          {felt === undefined
            ? words.unrated(numberText(target))
            : words.rated(numberText(felt), numberText(target), gapWords(felt - target))}
        </p>
      )}
      <Flags signs={sign ? 1 : 0} niggles={niggle === undefined ? 0 : 1} cutShort={0} />
      {niggle !== undefined && <p>{niggleWords(niggle)}</p>}
      {note !== undefined && <p className="as-sent">{words.note(note)}</p>}
    </div>
  );
}

const howMuch = ({ donePercent, activeSeconds, there }: BoardSession): readonly string[] => [
  ...(donePercent === undefined ? [] : [words.done(donePercent)]),
  ...(activeSeconds === undefined ? [] : [words.moved(minutes(msOfSeconds(activeSeconds)))]),
  ...(there ? [words.there] : []),
];

/** The plan as it is now, and of it as much as was done. */
function Landscape({ programme, session }: { programme: Programme; session: BoardSession }) {
  const found = sessionsOf(programme, session.group, session.week)[session.session - 1];
  if (found === undefined) return null;
  const timeline = timelineOf(found.plan);
  const done =
    session.donePercent === undefined
      ? undefined
      : (session.donePercent / 100) * (timeline.total / 1000);
  return (
    <Strip
      timeline={timeline}
      height={44}
      of={longestSession(programme, session.group)}
      label={stripInWords(found.plan)}
      // Of a day on the leader's list alone nobody knows how much it was.
      covered={done === undefined ? [] : [[0, done]]}
    />
  );
}
