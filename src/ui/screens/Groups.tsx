import { Link, useLocation, useParams } from 'wouter';
import { common } from '../../copy/common.ts';
import { groups } from '../../copy/groups.ts';
import { minutes, sentence } from '../../copy/times.ts';
import { stripInWords } from '../../copy/words.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import type { Group, Programme } from '../../domain/programme/programme.ts';
import { useApp, useLog, useProgrammes } from '../app-context.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { finishedSessions, nextSession } from '../parts/next-session.ts';
import { sessionsOf, timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { Strip } from '../parts/Strip.tsx';

/** A plain list of groups: who each is for, and what its first week looks like. */
export function Groups() {
  const { id } = useParams<{ id: string }>();
  const programme = useProgrammes((p) => p.programmes.find((each) => each.id === id));
  const chosen = useProgrammes((p) => (id === undefined ? undefined : p.chosen[id]));
  const entries = useLog((l) => l.entries);
  if (programme === undefined) return <NotHere />;
  const week = weekNow(programme, chosen, entries);
  return (
    <Screen title={groups.title} sub={programme.title} back={{ href: '/start', name: common.back }}>
      <p>{groups.lead}</p>
      <Link href={`/p/${programme.id}/find`} className="text-button">
        {groups.find}
      </Link>
      <ul className="lines">
        {programme.groups.map((group) => (
          <li key={group.id}>
            <GroupRow programme={programme} group={group} week={week} />
          </li>
        ))}
      </ul>
      <p className="soft">{groups.unsure}</p>
    </Screen>
  );
}

/** The week that a change of group would go on in: the next one for whoever has a group. */
function weekNow(
  programme: Programme,
  groupId: string | undefined,
  entries: readonly LogEntry[],
): number {
  if (groupId === undefined) return 1;
  const finished = finishedSessions(entries, programme.id, groupId);
  return nextSession(programme, groupId, finished)?.week ?? programme.weeks.length;
}

function GroupRow(props: { programme: Programme; group: Group; week: number }) {
  const { programme, group, week } = props;
  const programmes = useApp().programmes;
  const chosen = useProgrammes((p) => p.chosen[programme.id] === group.id);
  const [, go] = useLocation();
  const first = sessionsOf(programme, group.id, week)[0];
  const choose = async () => {
    await programmes.getState().chooseGroup(programme.id, group.id);
    go(`/p/${programme.id}`);
  };
  return (
    <div className="stack tight">
      <h2 className="big">{group.name}</h2>
      <p>{sentence(group.for)}</p>
      {first !== undefined && (
        <>
          <Strip
            timeline={timelineOf(first.plan)}
            height={52}
            label={`${groups.stripOf(group.name, week)} ${stripInWords(first.plan)}`}
          />
          <p className="small soft figures">
            {groups.week(week)}, {minutes(timelineOf(first.plan).total)}
          </p>
        </>
      )}
      <button
        type="button"
        className={chosen ? 'button' : 'button primary'}
        onClick={() => void choose()}
      >
        {chosen ? `${groups.chosen}: ${group.name}` : groups.choose(group.name)}
      </button>
    </div>
  );
}
