import type { Led } from '../../app/session-contract.ts';
import { leading as words } from '../../copy/lead-day.ts';
import { left } from '../../copy/times.ts';
import { ms } from '../../domain/units.ts';

/** What each group begins with, and which of them begin later than the others. */
export const LeadFirsts = ({ led: { plan } }: { led: Led }) => (
  <ul className="lead-firsts figures">
    {plan.groups.map(({ id, number, name, timeline, startsAt }) => {
      const [first] = timeline.segments;
      if (first === undefined) return null;
      return (
        <li key={id}>
          <strong>{words.group(number, name)}</strong>
          <span>
            {words.first(first.activity, left(ms(first.end - first.start)))}
            {startsAt > 0 && ` ${words.after(left(startsAt))}`}
          </span>
        </li>
      );
    })}
  </ul>
);
