import { paper } from '../../copy/paper.ts';
import { planLine } from '../../copy/plan-line.ts';
import { minutes, sentence } from '../../copy/times.ts';
import { weeks as words } from '../../copy/weeks.ts';
import { stripInWords } from '../../copy/words.ts';
import type { Group, SessionPlan } from '../../domain/programme/programme.ts';
import { lengthOfPart } from '../../domain/timeline/totals.ts';
import type { Ms } from '../../domain/units.ts';
import { timelineOf } from '../parts/plans.ts';
import { Strip } from '../parts/Strip.tsx';

/** How much room a session has: its strip above its words, beside them, or none. */
export type Density = 'wide' | 'dense' | 'bare';

/** By the number of different sessions on the page; tried out with eight groups. */
export const densityOf = (sessions: number): Density =>
  sessions <= 6 ? 'wide' : sessions <= 20 ? 'dense' : 'bare';

interface GroupProps {
  readonly group: Group;
  readonly sessions: readonly SessionPlan[];
  /** Length that fills the width: strips of one page share its measure. */
  readonly longest: Ms;
  readonly density: Density;
  /** Of the print, 1 for the usual. */
  readonly size: number;
}

const STRIP_PX = { wide: 46, dense: 34, bare: 0 } as const;
/** Below that, heights are not told apart. */
const LOWEST_PX = 22;

/** What one group does in a week: its landscape, the same in words, and what it adds up to. */
export function PaperGroup({ group, sessions, longest, density, size }: GroupProps) {
  const height = Math.max(LOWEST_PX, Math.round(STRIP_PX[density] * size));
  const [only] = sessions.length === 1 ? sessions : [];
  return (
    <li>
      <h3 className="paper-line">
        <span>
          {group.name} <small>{sentence(group.for)}</small>
        </span>
        {only !== undefined && <small>{totals(only)}</small>}
      </h3>
      {sessions.length === 0 && <p>{paper.noPlan}</p>}
      {sessions.map((session, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a session of a week is its number
        <div key={n} className="paper-session" data-density={density}>
          {density !== 'bare' && (
            <Strip
              timeline={timelineOf(session.plan)}
              height={height}
              of={longest}
              label={stripInWords(session.plan)}
            />
          )}
          <p>
            {only === undefined && <b>{paper.session(n + 1)}</b>}
            {planLine(session.plan)} {only === undefined && <b>{totals(session)}.</b>}
          </p>
        </div>
      ))}
    </li>
  );
}

function totals({ plan }: SessionPlan): string {
  const timeline = timelineOf(plan);
  return words.totals(minutes(timeline.total), minutes(lengthOfPart(timeline, 'main')));
}
