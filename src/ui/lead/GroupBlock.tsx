import { useId } from 'react';
import { leading as words } from '../../copy/lead-day.ts';
import type { LeadNow } from '../../domain/lead/lead-at.ts';
import { emsOf } from '../parts/moment.ts';
import { groupMoment, type Standing } from './group-moment.ts';

interface GroupBlockProps {
  readonly now: LeadNow;
  readonly standing: Standing;
  /** Time of day at which the group is done; nothing while nobody can know. */
  readonly ends: string | undefined;
}

/** One group, to be read at arm's length: what it does, how long yet, what comes then. */
export function GroupBlock({ now, standing, ends }: GroupBlockProps) {
  const id = useId();
  const { word, how, line, turn } = groupMoment(now, standing);
  const end = ends === undefined ? '' : now.state === 'done' ? words.ended(ends) : words.ends(ends);
  return (
    <section
      className="lead-group"
      data-state={standing === 'going' ? now.state : standing}
      aria-labelledby={id}
      style={{ '--ems': emsOf(word) } as React.CSSProperties}
    >
      <div className="lead-head">
        <h2 id={id}>{words.group(now.group.number, now.group.name)}</h2>
        {how !== '' && (
          <b className="lead-how" aria-hidden="true">
            {how}
          </b>
        )}
        <p className="small figures">{[turn, end].filter((each) => each !== '').join(' · ')}</p>
      </div>
      <p className="lead-word">
        {how !== '' && <span className="for-readers">{how} </span>}
        {word}
      </p>
      <p className="lead-line figures" role="timer">
        {line}
      </p>
    </section>
  );
}
