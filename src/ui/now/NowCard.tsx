import { Link } from 'wouter';
import { findingSeen } from '../../copy/advice.ts';
import { cautions } from '../../copy/cautions.ts';
import {
  countLine,
  eventLine,
  lateLine,
  missedLine,
  pauseLine,
  reEntryLine,
  restLine,
  nowCopy as words,
} from '../../copy/now.ts';
import { minutes, sentence } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import { stripInWords } from '../../copy/words.ts';
import type { NextSession } from '../../domain/advice/next-session.ts';
import type { Now } from '../../domain/advice/now.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { lengthOfPart } from '../../domain/timeline/totals.ts';
import { EffortLine } from '../parts/EffortLine.tsx';
import { timelineOf } from '../parts/plans.ts';
import { Strip } from '../parts/Strip.tsx';
import { AdviceCard } from './AdviceCard.tsx';
import { Pauses } from './Pauses.tsx';
import { useNow, useSituation } from './use-now.ts';

interface NowProps {
  readonly programme: Programme;
  readonly group: string;
}

/** What to do now: what comes first, the next session, how the week stands, and advice. */
export function NowCard({ programme, group }: NowProps) {
  const situation = useSituation(programme, group);
  const now = useNow(situation);
  const { care, next } = now;
  return (
    <>
      {care !== undefined && (
        <section className="notice alarm">
          <p>{findingSeen(care)}</p>
          <p>{cautions.notAdvice}</p>
          <Link href="/cautions" className="button">
            {cautions.title}
          </Link>
        </section>
      )}
      <Word now={now} programme={programme} />
      {next === undefined ? (
        <p>{words.through}</p>
      ) : (
        <Next next={next} programme={programme} isFirst={care === undefined} />
      )}
      <How now={now} programme={programme} />
      <AdviceCard situation={situation} groups={programme.groups} />
      <Pauses situation={situation} now={now} />
    </>
  );
}

/** The one thing to be said before the session: a pause, the way back in, or where the group is. */
function Word({ now, programme }: { now: Now; programme: Programme }) {
  const { pause, reEntry, late, start } = now;
  const said =
    pause !== undefined
      ? pauseLine(pause)
      : reEntry !== undefined
        ? reEntryLine(reEntry)
        : late !== undefined
          ? lateLine(late, programme.weeks.length)
          : start !== undefined
            ? words.before(start.days, start.date)
            : '';
  return said === '' ? null : <p className="big">{said}</p>;
}

interface NextProps {
  readonly next: NextSession;
  readonly programme: Programme;
  readonly isFirst: boolean;
}

function Next({ next, programme, isFirst }: NextProps) {
  const timeline = timelineOf(next.plan.plan);
  const at = `/p/${programme.id}/${next.week}/${next.session}`;
  const isNow = isFirst && next.need === 'due';
  return (
    <section className="card">
      <div className="row spread">
        <h2>{weeks.session(next.week, next.session)}</h2>
        <span className="tag">{words.need[next.need]}</span>
      </div>
      <Strip timeline={timeline} height={84} label={stripInWords(next.plan.plan)} named />
      <p className="figures">
        {weeks.totals(minutes(timeline.total), minutes(lengthOfPart(timeline, 'main')))}
      </p>
      <p>
        <EffortLine target={next.target} />.
      </p>
      {next.focus !== '' && <p>{sentence(next.focus)}</p>}
      {next.need === 'later' && <p>{words.from(next.from)}</p>}
      {next.together && <p>{words.together}</p>}
      <Link href={at} className={isNow ? 'button primary wide' : 'button wide'}>
        {weeks.open}
      </Link>
    </section>
  );
}

/** The week against what it is meant to hold, rest, what was missed, and the event. */
function How({ now, programme }: { now: Now; programme: Programme }) {
  const { count, rest, missed, event, stage } = now;
  return (
    <ul className="stack tight" aria-label={words.title}>
      {stage === 'under-way' && <li>{countLine(count)}</li>}
      {rest !== undefined && <li>{restLine(rest)}</li>}
      {missed !== undefined && <li>{missedLine(missed)}</li>}
      {event !== undefined && <li>{eventLine(event, programme.goal.name)}</li>}
    </ul>
  );
}
