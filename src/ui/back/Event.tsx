import { useMemo } from 'react';
import { Link, useParams } from 'wouter';
import { useStore } from 'zustand';
import { event } from '../../copy/event.ts';
import { day } from '../../copy/times.ts';
import { openSign } from '../../domain/advice/body.ts';
import { eventSession } from '../../domain/back/event-session.ts';
import { isoDate } from '../../domain/programme/calendar.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, useLog, useProgrammes } from '../app-context.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';
import { useDayToday } from './day-today.ts';
import { Reckoning } from './Reckoning.tsx';

/** What a programme leads to: about how long it takes, and when one is at the finish. */
export function Event() {
  const { id } = useParams<{ id: string }>();
  const programme = useProgrammes((p) => p.programmes.find((each) => each.id === id));
  const ready = useProgrammes((p) => p.ready);
  if (programme === undefined) return ready ? <NotHere /> : null;
  const { name, distanceM, date } = programme.goal;
  return (
    <Screen
      title={event.title(name)}
      sub={event.distance(distanceM, date === undefined ? '' : day(date))}
      back={{ href: `/p/${programme.id}`, name: event.weeks }}
    >
      <Inside programme={programme} />
    </Screen>
  );
}

function Inside({ programme }: { programme: Programme }) {
  const entries = useLog((l) => l.entries);
  const following = useStore(useApp().following, (f) => f.following[programme.id]);
  const group = useProgrammes((p) => p.chosen[programme.id]);
  const today = useDayToday();
  const session = useMemo(
    () => (group === undefined ? undefined : eventSession(programme, group)),
    [programme, group],
  );
  const sign = openSign({ entries, ...(following && { following }) }, today);
  if (sign !== undefined) return <Warning date={isoDate(sign)} />;
  if (group === undefined)
    return (
      <>
        <p>{event.noGroup}</p>
        <Link href={`/p/${programme.id}/groups`} className="button">
          {event.chooseGroup}
        </Link>
      </>
    );
  if (session === undefined) return <p>{event.noMoving}</p>;
  return (
    <Reckoning
      metres={programme.goal.distanceM}
      session={session}
      entries={entries}
      today={today}
    />
  );
}

/** A warning sign is answered with nothing that could be taken for "push on". */
function Warning({ date }: { date: string }) {
  return (
    <section className="notice alarm">
      <h2>{event.warningTitle}</h2>
      <p>{event.warning(day(date))}</p>
      <Link href="/cautions">{event.warningSigns}</Link>
    </section>
  );
}
