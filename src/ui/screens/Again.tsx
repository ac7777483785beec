import { useEffect, useReducer, useState } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import { again } from '../../copy/again.ts';
import { common } from '../../copy/common.ts';
import { day } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import { askAgainOf } from '../../domain/log/again.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { useApp, useLog, useSettings } from '../app-context.tsx';
import { EffortScale } from '../parts/EffortScale.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';

/** The effort once more, after a pause. The first answer is not shown: it would draw this one. */
export function Again() {
  const { entry } = useParams<{ entry: string }>();
  const found = useLog((l) => l.entries.find((each) => each.id === entry));
  const ready = useLog((l) => l.ready);
  if (found !== undefined) return <AgainForm key={found.id} entry={found} />;
  return ready ? <NotHere /> : null;
}

function AgainForm({ entry }: { entry: LogEntry }) {
  const log = useApp().log;
  const [, go] = useLocation();
  const [effortLater, setEffort] = useState(entry.feeling.effortLater);
  const save = async () => {
    if (effortLater !== undefined) {
      const feeling = { ...entry.feeling, effortLater };
      await log.getState().write({ ...entry, feeling });
    }
    go(`/done/${entry.id}`, { replace: true });
  };
  return (
    <Screen
      title={again.title}
      sub={`${day(entry.localDate)}. ${weeks.session(entry.week, entry.session)}, ${entry.group.name}.`}
      back={{ href: '/done', name: common.done }}
      foot={
        <button type="button" className="button primary wide" onClick={() => void save()}>
          {again.save}
        </button>
      }
    >
      <p>{again.lead}</p>
      <EffortScale value={effortLater} target={entry.target} onChange={setEffort} />
    </Screen>
  );
}

/** Where people look in. On the other pages something else is asked or done already. */
const LOOKED_IN = /^\/(start|done|back|p\/[^/]+)?$/;

/** Asks for it above the pages that are opened half an hour or more after a session. */
export function AskAgain() {
  const app = useApp();
  const [path] = useLocation();
  const entries = useLog((l) => l.entries);
  const notThis = useSettings((s) => s.notAgain);
  // A page that comes back from behind has not been opened anew, but the person has.
  const [, look] = useReducer((n: number) => n + 1, 0);
  useEffect(() => {
    document.addEventListener('visibilitychange', look);
    return () => document.removeEventListener('visibilitychange', look);
  }, []);
  const entry = askAgainOf(entries, app.clock.now(), notThis);
  if (entry === undefined || !LOOKED_IN.test(path)) return null;
  return (
    <div className="notice">
      <p>
        <strong>{again.banner(day(entry.localDate))}</strong>
      </p>
      <div className="row">
        <Link href={`/felt/${entry.id}/again`} className="button">
          {again.say}
        </Link>
        <button
          type="button"
          className="text-button"
          onClick={() => void app.settings.getState().change({ notAgain: entry.id })}
        >
          {again.not}
        </button>
      </div>
    </div>
  );
}
