import { useState } from 'react';
import { Link } from 'wouter';
import { log } from '../../copy/log.ts';
import { day, minutes } from '../../copy/times.ts';
import { PLACE } from '../../copy/words.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useLog } from '../app-context.tsx';
import { CoveredStrip } from '../parts/CoveredStrip.tsx';
import { Screen } from '../parts/Screen.tsx';

/** Rows drawn at once: the list opens at the same speed however long it has grown. */
const PAGE = 30;

/** The sessions that ended, newest first. */
export function Log() {
  const entries = useLog((l) => l.entries);
  const ready = useLog((l) => l.ready);
  const [shown, setShown] = useState(PAGE);
  const rest = entries.length - shown;
  return (
    <Screen title={log.title} sub={entries.length > 0 ? log.count(entries.length) : undefined}>
      <div className="row">
        <Link href="/done/new" className="button">
          {log.add}
        </Link>
        {entries.length > 0 && (
          <Link href="/back" className="button">
            {log.back}
          </Link>
        )}
      </div>
      {ready && entries.length === 0 && <p>{log.empty}</p>}
      <ul className="lines">
        {entries.slice(0, shown).map((entry) => (
          <li key={entry.id}>
            <Row entry={entry} />
          </li>
        ))}
      </ul>
      {rest > 0 && (
        <button type="button" className="button wide" onClick={() => setShown(shown + PAGE)}>
          {log.more(Math.min(PAGE, rest))}
        </button>
      )}
    </Screen>
  );
}

function Row({ entry }: { entry: LogEntry }) {
  return (
    <article className="stack tight">
      <h2>
        <Link href={`/done/${entry.id}`}>{day(entry.localDate)}</Link>
      </h2>
      <p className="small">
        {log.entry(entry.week, entry.session)}, {entry.group.name}.{' '}
        <span className="figures">{minutes(msOfSeconds(entry.doneSeconds))}</span>
        {entry.outcome === 'ended-early' && `, ${log.outcome['ended-early'].toLowerCase()}`}.
      </p>
      <CoveredStrip entry={entry} height={40} />
      <p className="small">{feltLine(entry)}</p>
    </article>
  );
}

/** Effort, niggle and warning sign of an entry in one line. */
export function feltLine(entry: LogEntry): string {
  const { effort, niggle, warningSign } = entry.feeling;
  const said = [
    effort === undefined ? log.unrated : log.effort(effort, Math.round(entry.target / 10)),
    niggle === undefined ? '' : `${log.niggle}: ${PLACE[niggle.place].toLowerCase()}`,
    warningSign === true ? log.warning : '',
  ].filter((part) => part !== '');
  return `${said.join('. ')}.`;
}
