import { Link, useParams } from 'wouter';
import { effortWords } from '../../copy/effort.ts';
import { felt } from '../../copy/felt.ts';
import { log } from '../../copy/log.ts';
import { day, length, timeOfDay } from '../../copy/times.ts';
import { PLACE, SEVERITY, SIDE } from '../../copy/words.ts';
import type { LogEntry, Niggle } from '../../domain/log/entry.ts';
import { kilometres } from '../../domain/log/fields.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useApp, useLog } from '../app-context.tsx';
import { CoveredStrip } from '../parts/CoveredStrip.tsx';
import { useDateAt } from '../parts/date-at.ts';
import { comparison } from '../parts/EffortScale.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { planOf } from '../parts/plan-of.ts';
import { timelineOf } from '../parts/plans.ts';
import { RemoveEntry } from '../parts/RemoveEntry.tsx';
import { Screen } from '../parts/Screen.tsx';

/** One session that ended. */
export function Entry() {
  const { entry } = useParams<{ entry: string }>();
  const found = useLog((l) => l.entries.find((each) => each.id === entry));
  const ready = useLog((l) => l.ready);
  const { clock } = useApp();
  const dateAt = useDateAt();
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
        {factsOf(found, clock.zoneTime(found.startedAt).offsetMinutes, dateAt).map(
          ([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd className="figures">{value}</dd>
            </div>
          ),
        )}
      </dl>
      <div className="row">
        <Link
          href={`/felt/${found.id}`}
          className={found.feeling.effort === undefined ? 'button primary' : 'button'}
        >
          {found.feltAt === undefined ? log.rate : log.change}
        </Link>
        <Link href={`/done/${found.id}/edit`} className="button">
          {log.edit}
        </Link>
      </div>
      <details>
        <summary>{log.plan}</summary>
        <p className="written">{found.plan}</p>
      </details>
      <RemoveEntry entry={found} />
    </Screen>
  );
}

type Fact = readonly [name: string, value: string];

/**
 * @param hereOffset minutes east of UTC that this phone's clocks showed then
 * @param dateAt the date on this phone at a moment
 */
function factsOf(
  entry: LogEntry,
  hereOffset: number,
  dateAt: (at: number) => string,
): readonly Fact[] {
  const { startedAt, offsetMinutes, zone, distanceM, editedAt } = entry;
  const plan = planOf(entry.plan);
  const done = length(msOfSeconds(entry.doneSeconds));
  const time = timeOfDay(startedAt, offsetMinutes);
  const facts: Fact[] = [
    [log.when, offsetMinutes === hereOffset ? time : log.inZone(time, zone)],
    [log.group, entry.group.name],
    [log.how, log.hows[entry.how]],
    [log.done, plan ? log.doneOf(done, length(timelineOf(plan).total)) : done],
  ];
  if (entry.activeSeconds !== entry.doneSeconds)
    facts.push([log.active, length(msOfSeconds(entry.activeSeconds))]);
  if (distanceM !== undefined) facts.push([log.distance, log.km(kilometres(distanceM))]);
  facts.push(...feltFacts(entry));
  if (editedAt !== undefined) facts.push([log.edited, day(dateAt(editedAt))]);
  return facts;
}

function feltFacts({ feeling, target: percent }: LogEntry): readonly Fact[] {
  const { effort, effortLater, niggle, soreness, warningSign, note } = feeling;
  const target = Math.round(percent / 10);
  const facts: Fact[] = [];
  if (effort !== undefined)
    facts.push([
      log.effortTitle,
      `${effort}: ${effortWords(effort)}. ${felt.target(target, effortWords(target))}. ${comparison(effort, percent)}`,
    ]);
  if (effortLater !== undefined)
    facts.push([log.again, `${effortLater}: ${effortWords(effortLater)}.`]);
  if (warningSign === true) facts.push([log.warning, log.warningFelt]);
  if (niggle !== undefined) facts.push([log.niggle, niggleInWords(niggle)]);
  if (soreness) facts.push([log.sore, log.soreFelt]);
  if (note !== undefined) facts.push([log.note, note]);
  return facts;
}

/** "Knee, left, changed how I moved". */
const niggleInWords = ({ place, side, severity }: Niggle): string =>
  [
    PLACE[place],
    side === undefined ? '' : SIDE[side].toLowerCase(),
    severity === undefined ? '' : SEVERITY[severity],
  ]
    .filter((part) => part !== '')
    .join(', ');
