import type { ReactNode } from 'react';
import { Link, Redirect, useParams } from 'wouter';
import { cameLine } from '../../copy/came.ts';
import { common } from '../../copy/common.ts';
import { day, minutes, sentence } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import { stripInWords } from '../../copy/words.ts';
import type { Group, Programme } from '../../domain/programme/programme.ts';
import { lengthOfPart } from '../../domain/timeline/totals.ts';
import { useApp, useFollowing, useLog, useProgrammes, useReceived } from '../app-context.tsx';
import { useLater } from '../later.ts';
import { EffortLine } from '../parts/EffortLine.tsx';
import { KeptFocus } from '../parts/KeptFocus.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { finishedSessions, nextSession, sessionKey } from '../parts/next-session.ts';
import { allSame, longestSession, sessionsOf, timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { Strip } from '../parts/Strip.tsx';

/** The programme for one group: the next session first, then every week with its sessions. */
export function Weeks() {
  const { id } = useParams<{ id: string }>();
  const programme = useProgrammes((p) => p.programmes.find((each) => each.id === id));
  const chosen = useProgrammes((p) => (id === undefined ? undefined : p.chosen[id]));
  const entries = useLog((l) => l.entries);
  const isNew = useIsNew();
  const { later, again } = useLater();
  if (programme === undefined) return <NotHere />;
  const group = programme.groups.find((each) => each.id === chosen);
  if (group === undefined) return <Redirect to={`/p/${programme.id}/groups`} replace />;
  const finished = finishedSessions(entries, programme.id, group.id);
  return (
    <Screen
      title={programme.title}
      sub={
        <>
          {weeks.group(group.name)}. {sentence(group.for)}
        </>
      }
    >
      <KeptFocus heir="first">
        {later !== undefined ? (
          <later.NowCard programme={programme} group={group.id} />
        ) : again !== undefined ? (
          <Missing onAgain={again} />
        ) : isNew ? (
          <First programme={programme} group={group} />
        ) : (
          // What is next follows from all that was done and felt, and is not guessed at before.
          <div className="to-come">
            <p className="for-readers">{common.loading}</p>
          </div>
        )}
      </KeptFocus>
      <ol className="lines weeks">
        {programme.weeks.map((_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a week is its number
          <li key={i}>
            <WeekRow programme={programme} group={group} number={i + 1} finished={finished}>
              {later && <later.WeekTag programme={programme} group={group.id} week={i + 1} />}
            </WeekRow>
          </li>
        ))}
      </ol>
      <div className="row">
        <Link href={`/p/${programme.id}/groups`} className="text-button">
          {weeks.change}
        </Link>
        <Link href="/start" className="text-button">
          {weeks.others}
        </Link>
      </div>
      {later && <later.Ways programme={programme} />}
      <Goal programme={programme} />
    </Screen>
  );
}

/**
 * Whether this phone knows of nothing that was done, felt, paused or decided, in whatever
 * programme: then the first session comes first, and nothing stands in its way.
 */
function useIsNew(): boolean {
  const isUndecided = useFollowing((f) => f.ready && Object.keys(f.following).length === 0);
  return useLog((l) => l.ready && !l.unread && l.entries.length === 0) && isUndecided;
}

/** In the place of what could not be fetched. */
function Missing({ onAgain }: { onAgain: () => void }) {
  return (
    <div className="notice" role="alert">
      <p>{common.missing.body}</p>
      <button type="button" className="button" onClick={onAgain}>
        {common.missing.again}
      </button>
    </div>
  );
}

interface Of {
  readonly programme: Programme;
  readonly group: Group;
}

/** The first session of someone who begins. */
function First({ programme, group }: Of) {
  const next = nextSession(programme, group.id, new Set());
  const plan = next && sessionsOf(programme, group.id, next.week)[next.session - 1]?.plan;
  if (next === undefined || plan === undefined) return null;
  const timeline = timelineOf(plan);
  return (
    <section className="card">
      <div className="row spread">
        <h2>{weeks.session(next.week, next.session)}</h2>
        <span className="tag">{weeks.next}</span>
      </div>
      <Strip timeline={timeline} height={84} label={stripInWords(plan)} named />
      <p className="figures">
        {weeks.totals(minutes(timeline.total), minutes(lengthOfPart(timeline, 'main')))}
      </p>
      <Link href={`/p/${programme.id}/${next.week}/${next.session}`} className="button wide">
        {weeks.open}
      </Link>
    </section>
  );
}

interface RowProps extends Of {
  readonly number: number;
  readonly finished: ReadonlySet<string>;
  /** How the week stands. */
  readonly children?: ReactNode;
}

function WeekRow({ programme, group, number, finished, children }: RowProps) {
  const week = programme.weeks[number - 1];
  const sessions = sessionsOf(programme, group.id, number);
  if (week === undefined) return null;
  const longest = longestSession(programme, group.id);
  const shown = allSame(sessions) ? sessions.slice(0, 1) : sessions;
  return (
    <div className="week">
      <p className="week-number" aria-hidden="true">
        {number}
      </p>
      <div className="stack tight">
        <h2>
          <span className="for-readers">{weeks.week(number)}: </span>
          {week.focus}
        </h2>
        {children}
        <p className="small soft">
          {weeks.perWeek(week.timesPerWeek.min, week.timesPerWeek.max)}.{' '}
          <EffortLine target={week.effort} />.
        </p>
        {sessions.length === 0 && <p>{weeks.noPlan}</p>}
        {shown.map((session) => (
          <Strip
            key={session.text}
            timeline={timelineOf(session.plan)}
            height={44}
            of={longest}
            label={stripInWords(session.plan)}
          />
        ))}
        <ul className="choices">
          {sessions.map((session, j) => {
            const done = finished.has(sessionKey(number, j + 1));
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a session of a week is its number
              <li key={j}>
                <Link
                  href={`/p/${programme.id}/${number}/${j + 1}`}
                  className={done ? 'session-link done' : 'session-link'}
                >
                  <b className="for-readers">{weeks.week(number)}, </b>
                  {weeks.sessionLink(j + 1)}
                  <span className="figures">
                    {done ? weeks.doneMark : minutes(timelineOf(session.plan).total)}
                  </span>
                </Link>
              </li>
            );
          })}
        </ul>
        {week.together !== undefined && (
          <p className="small soft">{weeks.together(week.together)}</p>
        )}
      </div>
    </div>
  );
}

function Goal({ programme }: { programme: Programme }) {
  const { goal, change } = programme;
  const came = useReceived((r) => r.came[programme.id]);
  const { clock } = useApp();
  const km = `${goal.distanceM / 1000} km`;
  return (
    <div className="stack tight soft">
      <p>{weeks.goal(goal.name, km, goal.date === undefined ? '' : day(goal.date))}.</p>
      {came !== undefined && <p>{cameLine(came, clock.now())}</p>}
      {change !== undefined && (
        <p>
          {weeks.changeNote}: {change}
        </p>
      )}
    </div>
  );
}
