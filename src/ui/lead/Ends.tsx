import { leadDay as words } from '../../copy/lead-day.ts';
import { length } from '../../copy/times.ts';
import { APART, spreadOf } from '../../domain/lead/choose.ts';
import type { LeadPlan } from '../../domain/lead/lead-plan.ts';
import { endOf } from '../../domain/lead/moments.ts';

/** A plain warning where groups are not done together; it stands in nobody's way. */
export function Ends({ plan }: { plan: LeadPlan }) {
  const spread = spreadOf(plan);
  if (spread <= APART) return null;
  return (
    <div className="notice" role="status">
      <p>{words.apart(length(spread))}</p>
      <ul className="bullets">
        {plan.groups.map((group) => (
          <li key={group.id}>{words.ends(group, length(endOf(group)))}</li>
        ))}
      </ul>
    </div>
  );
}
