import { understood } from '../../../copy/cell.ts';
import { type Along, fill } from '../../../copy/cell-fill.ts';
import { length } from '../../../copy/times.ts';
import { weeks } from '../../../copy/weeks.ts';
import { formatPlan } from '../../../domain/programme/format.ts';
import type { Plan } from '../../../domain/programme/plan.ts';
import { layOut } from '../../../domain/timeline/lay-out.ts';
import { lengthOfPart } from '../../../domain/timeline/totals.ts';
import type { StepUp } from '../../../domain/workshop/edit.ts';
import { steppedUp } from '../../../domain/workshop/step-up.ts';
import { Strip } from '../../parts/Strip.tsx';
import type { PlaceAfter } from './places-after.ts';

interface WhatHappensProps {
  readonly plan: Plan;
  /** As far as the copy goes. */
  readonly places: readonly PlaceAfter[];
  readonly step: StepUp;
  readonly along: Along;
}

/** What a copy will do, before it is done: who gets what, who keeps theirs, and how it ends. */
export function WhatHappens({ plan, places, step, along }: WhatHappensProps) {
  const changed = places.filter(({ pinned }) => !pinned);
  const kept = places.filter(({ pinned }) => pinned);
  if (changed.length === 0) return <p className="notice">{fill.nothing}</p>;
  const last = places.findLastIndex(({ pinned }) => !pinned);
  return (
    <>
      <div className="notice" role="status">
        <p>{fill.will(changed, step, along)}</p>
        <Growth plan={plan} places={places} step={step} />
        {kept.length > 0 && <p>{fill.kept(kept)}</p>}
        <p className="small">{fill.undo}</p>
      </div>
      {step.kind !== 'same' && (
        <LastOne plan={steppedUp(plan, step, last + 1)} name={places[last]?.name ?? ''} />
      )}
    </>
  );
}

/** Says where a session cannot grow as was asked, and does not come to be other than it was. */
function Growth({ plan, places, step }: Omit<WhatHappensProps, 'along'>) {
  if (step.kind === 'same') return null;
  const texts = [0, ...places.keys()].map((_, n) => formatPlan(steppedUp(plan, step, n)));
  const stop = texts.findIndex((text, n) => n > 0 && text === texts[n - 1]);
  if (stop === 1) return <p>{fill.noUp}</p>;
  return stop === -1 ? null : <p>{fill.stops(places[stop - 1]?.name ?? '')}</p>;
}

function LastOne({ plan, name }: { plan: Plan; name: string }) {
  const timeline = layOut(plan);
  const main = lengthOfPart(timeline, 'main');
  return (
    <div className="cell-good">
      <p>{fill.last(name)}</p>
      <Strip timeline={timeline} height={44} />
      <p className="small figures">
        <strong>{weeks.totals(length(timeline.total), length(main))}.</strong> {understood(plan)}
      </p>
    </div>
  );
}
