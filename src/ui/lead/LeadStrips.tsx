import { leading as words } from '../../copy/lead-day.ts';
import type { LeadPlan } from '../../domain/lead/lead-plan.ts';
import { type Ms, ms } from '../../domain/units.ts';
import { Strip } from '../parts/Strip.tsx';

interface LeadStripsProps {
  readonly plan: LeadPlan;
  readonly total: Ms;
  readonly position: Ms;
}

const STRIP_PX = 36;
const percent = (part: number, of: number): string =>
  `${Math.round((part / Math.max(1, of)) * 1000) / 10}%`;

/** All groups on one axis of time, each from its own start, and where they are now. */
export function LeadStrips({ plan, total, position }: LeadStripsProps) {
  return (
    <section className="lead-strips" aria-hidden="true">
      <div className="lead-now">
        <i style={{ left: percent(Math.min(total, position), total) }} />
      </div>
      {plan.groups.map(({ id, number, startsAt, timeline }, row) => (
        <div key={id} className="lead-strip" style={{ gridRow: row + 1 }}>
          <b title={words.strips}>{number}</b>
          <div style={{ paddingLeft: percent(startsAt, total) }}>
            <Strip timeline={timeline} height={STRIP_PX} of={ms(total - startsAt)} />
          </div>
        </div>
      ))}
    </section>
  );
}
