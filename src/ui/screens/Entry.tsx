import { Link, useParams } from 'wouter';
import { effortWords } from '../../copy/effort.ts';
import { felt } from '../../copy/felt.ts';
import { log } from '../../copy/log.ts';
import { day, length, timeOfDay } from '../../copy/times.ts';
import { PLACE, SIDE } from '../../copy/words.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useLog } from '../app-context.tsx';
import { CoveredStrip } from '../parts/CoveredStrip.tsx';
import { comparison } from '../parts/EffortScale.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { planOf } from '../parts/plan-of.ts';
import { timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';

/** One session that ended. */
export function Entry() {
  const { entry } = useParams<{ entry: string }>();
  const found = useLog((l) => l.entries.find((each) => each.id === entry));
  const ready = useLog((l) => l.ready);
  if (found === undefined) return ready ? <NotHere /> : null;
  return (
    <Screen
      title={day(found.localDate)}
      sub={`${log.entry(found.week, found.session)}. ${found.programme.title}.`}
      back={{ href: '/done', name: log.title }}
    >
      <CoveredStrip entry={found} height={110} named />
      <p className="small soft">{log.stripHelp}</p>
      <dl className="pairs">
        {factsOf(found).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="figures">{value}</dd>
          </div>
        ))}
      </dl>
      <div>
        <Link
          href={`/felt/${found.id}`}
          className={found.feeling.effort === undefined ? 'button primary' : 'button'}
        >
          {found.feltAt === undefined ? log.rate : log.change}
        </Link>
      </div>
      <details>
        <summary>{log.plan}</summary>
        <p className="written">{found.plan}</p>
      </details>
    </Screen>
  );
}

function factsOf(entry: LogEntry): readonly (readonly [string, string])[] {
  const plan = planOf(entry.plan);
  const done = length(msOfSeconds(entry.doneSeconds));
  const { effort, niggle, warningSign, note } = entry.feeling;
  const target = Math.round(entry.target / 10);
  const facts: (readonly [string, string])[] = [
    [log.when, timeOfDay(entry.startedAt, entry.offsetMinutes)],
    [log.group, entry.group.name],
    [log.done, plan ? log.doneOf(done, length(timelineOf(plan).total)) : done],
  ];
  if (entry.activeSeconds !== entry.doneSeconds)
    facts.push([log.active, length(msOfSeconds(entry.activeSeconds))]);
  if (effort !== undefined)
    facts.push([
      log.effortTitle,
      `${effort}: ${effortWords(effort)}. ${felt.target(target, effortWords(target))}. ${comparison(effort - target)}`,
    ]);
  if (warningSign === true) facts.push([log.warning, log.warningFelt]);
  if (niggle !== undefined)
    facts.push([
      log.niggle,
      niggle.side === undefined
        ? PLACE[niggle.place]
        : `${PLACE[niggle.place]}, ${SIDE[niggle.side].toLowerCase()}`,
    ]);
  if (note !== undefined) facts.push([log.note, note]);
  return facts;
}
