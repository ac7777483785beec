import { Link, Redirect } from 'wouter';
import { cameLine, exchangeWays } from '../../copy/came.ts';
import { common } from '../../copy/common.ts';
import { minutes } from '../../copy/times.ts';
import { welcome } from '../../copy/welcome.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, useProgrammes, useReceived } from '../app-context.tsx';
import { useLater } from '../later.ts';
import { OpenFile } from '../parts/OpenFile.tsx';
import { longestSession, sessionsOf, timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { Strip } from '../parts/Strip.tsx';

/** The start: straight to the sessions for someone who has one group, else the welcome. */
export function Start() {
  const ready = useProgrammes((p) => p.ready);
  const followed = useProgrammes((p) => p.programmes.filter((each) => p.chosen[each.id]).length);
  const first = useProgrammes((p) => p.programmes.find((each) => p.chosen[each.id])?.id);
  if (!ready) return <p className="for-readers">{common.loading}</p>;
  if (followed === 1 && first !== undefined) return <Redirect to={`/p/${first}`} replace />;
  return <Welcome />;
}

/** What it is in two sentences, the programmes on this phone, a file, and how to keep the app. */
export function Welcome() {
  const programmes = useProgrammes((p) => p.programmes);
  const { later } = useLater();
  const several = useProgrammes((p) => p.programmes.filter((each) => p.chosen[each.id]).length > 1);
  return (
    <Screen title={welcome.title}>
      <div className="stack tight lead">
        <p>{welcome.what}</p>
        <p className="soft">{welcome.how}</p>
      </div>
      <section className="stack">
        <h2 className={several ? '' : 'for-readers'}>
          {several ? welcome.which : welcome.programmes}
        </h2>
        {programmes.map((programme) => (
          <ProgrammeCard key={programme.id} programme={programme} />
        ))}
      </section>
      <OpenFile />
      <div className="stack tight">
        <Link href="/join" className="text-button">
          {exchangeWays.join}
        </Link>
        <Link href="/lead" className="text-button">
          {exchangeWays.lead}
        </Link>
        <Link href="/records" className="text-button">
          {welcome.backup}
        </Link>
      </div>
      {later && <later.InstallHint />}
    </Screen>
  );
}

function ProgrammeCard({ programme }: { programme: Programme }) {
  const chosen = useProgrammes((p) => p.chosen[programme.id]);
  const came = useReceived((r) => r.came[programme.id]);
  const { clock } = useApp();
  const group = programme.groups.find((each) => each.id === chosen);
  const { later } = useLater();
  return (
    <article className="card">
      <h3 className="big">{programme.title}</h3>
      <p className="soft">
        {welcome.by(programme.leader.name)}.{' '}
        {welcome.weeks(programme.weeks.length, programme.groups.length)}.
      </p>
      {came !== undefined && <p className="small soft">{cameLine(came, clock.now())}</p>}
      {later && group && <later.NextLine programme={programme} group={group.id} />}
      <Ladder programme={programme} group={group?.id} />
      <Link
        href={group === undefined ? `/p/${programme.id}/groups` : `/p/${programme.id}`}
        className="button primary"
      >
        {group === undefined ? welcome.choose : welcome.open(group.name)}
      </Link>
    </article>
  );
}

/** Two strips of one measure: the first session of all, and the longest. */
function Ladder({ programme, group }: { programme: Programme; group: string | undefined }) {
  const start = programme.groups.find((each) => each.id === group) ?? programme.groups[0];
  const goal = programme.groups.find((each) => each.id === group) ?? programme.groups.at(-1);
  if (start === undefined || goal === undefined) return null;
  const first = sessionsOf(programme, start.id, 1)[0];
  const longest = longestSession(programme, goal.id);
  const last = programme.weeks
    .flatMap((week) => week.sessions[goal.id] ?? [])
    .findLast((session) => timelineOf(session.plan).total === longest);
  return (
    <div className="stack">
      {[
        [first, welcome.fromTo.first(start.name)] as const,
        [last, welcome.fromTo.longest(goal.name)] as const,
      ].map(
        ([session, caption]) =>
          session !== undefined && (
            <figure key={caption} className="stack tight">
              <Strip timeline={timelineOf(session.plan)} height={48} of={longest} />
              <figcaption className="small soft">
                {caption}, {minutes(timelineOf(session.plan).total)}
              </figcaption>
            </figure>
          ),
      )}
    </div>
  );
}
