import { useParams } from 'wouter';
import { weeks } from '../../copy/weeks.ts';
import { useProgrammes } from '../app-context.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { sessionsOf } from '../parts/plans.ts';
import { Hear } from '../workshop/Hear.tsx';

/** A session of one's own group, heard from cue to cue before it is done. */
export function HearSession() {
  const { id = '', ...at } = useParams<{ id: string; week: string; session: string }>();
  const [week, session] = [Number(at.week), Number(at.session)];
  const programme = useProgrammes((p) => p.programmes.find((each) => each.id === id));
  const group = useProgrammes((p) => p.chosen[id]);
  const named = programme?.groups.find((each) => each.id === group);
  const plan = programme && named && sessionsOf(programme, named.id, week)[session - 1];
  const found = programme?.weeks[week - 1];
  if (programme === undefined || named === undefined || plan === undefined || found === undefined)
    return <NotHere />;
  const title = weeks.session(week, session);
  return (
    <Hear
      source={{
        title,
        groupName: named.name,
        plan: plan.plan,
        reminders: programme.reminders,
        target: found.effort,
        fileName: `${programme.id}-w${week}-${named.id}-${session}`,
      }}
      back={{ href: `/p/${programme.id}/${week}/${session}`, name: title }}
    />
  );
}
