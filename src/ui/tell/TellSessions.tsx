import { useState } from 'react';
import { log as logWords } from '../../copy/log.ts';
import { standing, tell } from '../../copy/tell.ts';
import { day, minutes } from '../../copy/times.ts';
import { RESPONSE_LIMITS } from '../../domain/exchange/response.ts';
import { type Standing, standingIn } from '../../domain/exchange/tell.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import type { Told } from '../../domain/log/person.ts';
import { msOfSeconds } from '../../domain/units.ts';
import type { Choosing } from './choices.ts';
import { Tick } from './Tick.tsx';

/** Rows drawn at once: the page opens at the same speed however long the log has grown. */
const PAGE = 12;

interface SessionsProps {
  /** Newest first. */
  readonly entries: readonly LogEntry[];
  readonly told: readonly Told[];
  readonly choosing: Choosing;
}

/** The sessions of the programme, those ticked that the leader has not heard of. */
export function TellSessions({ entries, told, choosing }: SessionsProps) {
  const { ids, change } = choosing;
  const [shown, setShown] = useState(PAGE);
  const standsAt = standingIn(told);
  const rest = entries.length - shown;
  const tick = (id: string, isOn: boolean): void =>
    change({ ids: isOn ? [...ids, id] : ids.filter((each) => each !== id) });
  return (
    <section className="rule">
      <fieldset className="stack">
        <legend>{tell.sessions}</legend>
        <p className="small soft">
          {tell.sessionsHelp}{' '}
          <span className="figures">{tell.ticked(ids.length, entries.length)}</span>
        </p>
        <div className="row">
          <button
            type="button"
            className="text-button"
            onClick={() =>
              change({ ids: entries.slice(0, RESPONSE_LIMITS.entries).map(({ id }) => id) })
            }
          >
            {tell.all}
          </button>
          <button type="button" className="text-button" onClick={() => change({ ids: [] })}>
            {tell.noneTicked}
          </button>
        </div>
        <div className="choices list">
          {entries.slice(0, shown).map((entry) => (
            <Tick
              key={entry.id}
              checked={ids.includes(entry.id)}
              name={day(entry.localDate)}
              help={rowHelp(entry, standsAt(entry))}
              onChange={(isOn) => tick(entry.id, isOn)}
            />
          ))}
        </div>
        {rest > 0 && (
          <button type="button" className="button wide" onClick={() => setShown(shown + PAGE)}>
            {tell.showMore(Math.min(PAGE, rest))}
          </button>
        )}
      </fieldset>
    </section>
  );
}

function rowHelp(entry: LogEntry, stands: Standing): string {
  const { effort } = entry.feeling;
  const said = standing(stands);
  return [
    logWords.entry(entry.week, entry.session),
    minutes(msOfSeconds(entry.doneSeconds)),
    effort === undefined
      ? logWords.unrated
      : logWords.effort(effort, Math.round(entry.target / 10)),
    ...(said === '' ? [] : [said]),
  ].join('. ');
}
