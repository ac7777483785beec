import { Link } from 'wouter';
import { nowCopy as words } from '../../copy/now.ts';
import { minutes, sentence } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import { stripInWords } from '../../copy/words.ts';
import type { NextSession } from '../../domain/advice/next-session.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { lengthOfPart } from '../../domain/timeline/totals.ts';
import { EffortLine } from '../parts/EffortLine.tsx';
import { timelineOf } from '../parts/plans.ts';
import { Strip } from '../parts/Strip.tsx';

interface NextProps {
  readonly next: NextSession;
  readonly programme: Programme;
  /** ISO 8601 */
  readonly today: string;
  /** A sign, a niggle or a pause comes first: it can be opened, and nothing asks for it. */
  readonly waits: boolean;
}

/** The next session at a glance: how long, how hard, from when. */
export function NextCard({ next, programme, today, waits }: NextProps) {
  const timeline = timelineOf(next.plan.plan);
  const isToday = next.from <= today;
  const isAsked = !waits && isToday && next.need === 'due';
  return (
    <section className="card" aria-labelledby="next">
      <div className="row spread">
        <h2 id="next">{weeks.session(next.week, next.session)}</h2>
        <span className="tag">{waits ? words.waits : words.need[next.need]}</span>
      </div>
      <Strip timeline={timeline} height={84} label={stripInWords(next.plan.plan)} named />
      <p className="figures">
        {weeks.totals(minutes(timeline.total), minutes(lengthOfPart(timeline, 'main')))}
      </p>
      <p>
        <EffortLine target={next.target} />.
      </p>
      {next.focus !== '' && <p>{sentence(next.focus)}</p>}
      {!waits && !isToday && <p>{words.from(next.from)}</p>}
      {next.together && <p>{words.together}</p>}
      <Link
        href={`/p/${programme.id}/${next.week}/${next.session}`}
        className={isAsked ? 'button primary wide' : 'button wide'}
      >
        {weeks.open}
      </Link>
    </section>
  );
}
