import { useRef } from 'react';
import { Link } from 'wouter';
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
import type { FindingCode } from '../../domain/advice/finding.ts';
import type { Now } from '../../domain/advice/now.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { AdviceCard } from './AdviceCard.tsx';
import { NextCard } from './NextCard.tsx';
import { Pauses } from './Pauses.tsx';
import { useAdvice, useNow, useSituation } from './use-now.ts';

interface NowProps {
  readonly programme: Programme;
  readonly group: string;
}

/** What to do now: what comes first, the next session, how the week stands, and advice. */
export function NowCard({ programme, group }: NowProps) {
  const situation = useSituation(programme, group);
  const now = useNow(situation);
  const advice = useAdvice(situation);
  const top = useRef<HTMLHeadingElement>(null);
  // What was pressed is gone once it is decided, and all above it may have changed.
  const onDecided = () => {
    window.scrollTo(0, 0);
    top.current?.focus({ preventScroll: true });
  };
  const { care, next, pause } = now;
  const { code } = advice.because;
  const card = (
    <AdviceCard
      key="advice"
      situation={situation}
      advice={advice}
      // Said already by what stands above.
      brief={code === 'away'}
      onDecided={onDecided}
    />
  );
  return (
    <>
      <h2 ref={top} tabIndex={-1} className="for-readers">
        {words.title}
      </h2>
      {care !== undefined && (
        <div className="notice alarm">
          {card}
          <p>{cautions.notAdvice}</p>
          <Link href="/cautions" className="button">
            {cautions.title}
          </Link>
        </div>
      )}
      <Word now={now} programme={programme} />
      {next === undefined ? (
        <p>{words.through}</p>
      ) : (
        <NextCard
          next={next}
          programme={programme}
          today={situation.today}
          waits={care !== undefined || pause !== undefined}
        />
      )}
      <How now={now} programme={programme} because={code} />
      {care === undefined && code !== 'paused' && card}
      <Pauses situation={situation} now={now} onDecided={onDecided} />
    </>
  );
}

/** The one thing to be said before the session: a pause, the way back in, or where the group is. */
function Word({ now, programme }: { now: Now; programme: Programme }) {
  const said = wordOf(now, programme.weeks.length);
  return said === undefined ? null : <p className="big">{said}</p>;
}

function wordOf({ pause, reEntry, late, start, care }: Now, weeks: number): string | undefined {
  if (pause !== undefined) return pauseLine(pause);
  // With a sign or a niggle in the way, nothing here leads back into sessions.
  if (care !== undefined) return undefined;
  if (reEntry !== undefined) return reEntryLine(reEntry);
  if (late !== undefined) return lateLine(late, weeks);
  return start && words.before(start.days, start.date);
}

interface HowProps {
  readonly now: Now;
  readonly programme: Programme;
  /** What the advice says, which is not said twice. */
  readonly because: FindingCode;
}

/** The week against what it is meant to hold, rest, what was missed, and the event. */
function How({ now, programme, because }: HowProps) {
  const { count, rest, missed, event, stage, care } = now;
  const counts = care === undefined && stage === 'under-way';
  const isSaid = because === 'thin-week' && missed?.what === 'last-week';
  const lines = [
    counts && countLine(count),
    care === undefined && because !== 'hard-days' && rest !== undefined && restLine(rest),
    counts && missed !== undefined && !isSaid && missedLine(missed),
    event !== undefined && eventLine(event, programme.goal.name),
  ].filter((line) => line !== false);
  if (lines.length === 0) return null;
  return (
    <ul className="stack tight" aria-label={words.how}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
