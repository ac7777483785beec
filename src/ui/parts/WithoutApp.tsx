import { Link, useLocation } from 'wouter';
import type { Choice } from '../../app/session-contract.ts';
import { there } from '../../copy/by-hand.ts';
import { thereNow } from '../../domain/log/by-hand.ts';
import { beganAt } from '../../domain/log/local-time.ts';
import { useApp, useLog, useProgrammes } from '../app-context.tsx';
import { useOneAtATime } from './use-one-at-a-time.ts';
import { whichOf } from './which.ts';

/** A session that was done without the app: with the group just now, or at any other time. */
export function WithoutApp({ choice }: { choice: Choice }) {
  const app = useApp();
  const [, go] = useLocation();
  const programmes = useProgrammes((p) => p.programmes);
  const { programmeId, week, session } = choice;
  const began = (utc: number) => beganAt(utc, app.clock.zoneTime(utc));
  const today = began(app.clock.now()).localDate;
  const already = useLog((l) =>
    l.entries.find(
      (entry) =>
        entry.programme.id === programmeId &&
        entry.week === week &&
        entry.session === session &&
        entry.localDate === today,
    ),
  );
  const write = useOneAtATime(async () => {
    const which = whichOf(programmes, choice);
    if (which === undefined) return;
    const entry = thereNow(app.newId(), which, app.clock.now(), began);
    await app.log.getState().write(entry);
    go(`/felt/${entry.id}`);
  });
  return (
    <section className="stack rule">
      <h2>{there.title}</h2>
      {already === undefined ? (
        <>
          <p className="small">{there.wasHelp}</p>
          <div>
            <button type="button" className="button" onClick={() => void write()}>
              {there.was}
            </button>
          </div>
        </>
      ) : (
        <Link href={`/done/${already.id}`} className="text-button">
          {there.already}
        </Link>
      )}
      <Link href={`/done/new/${programmeId}/${week}/${session}`} className="text-button">
        {there.hand}
      </Link>
    </section>
  );
}
