import { useEffect, useState } from 'react';
import type { LedBefore } from '../../app/session-contract.ts';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { agreedStart } from '../../copy/agreed-start.ts';
import { leadDay } from '../../copy/lead-day.ts';
import { place as placeSaid, timeOfDay } from '../../copy/times.ts';
import { leadPlanOf } from '../../domain/lead/choose.ts';
import { agreedStartOf, type LeadMark, placeByClock } from '../../domain/lead/cut-off.ts';
import { leadTimeline } from '../../domain/lead/lead-timeline.ts';
import type { Ms } from '../../domain/units.ts';
import { useApp, useSettings } from '../app-context.tsx';
import { mediumOf } from '../parts/next-step.ts';
import { Screen } from '../parts/Screen.tsx';
import { deskAt } from '../workshop/addresses.ts';
import { LeadFoot } from './LeadFoot.tsx';
import { useLed } from './use-led.ts';

const words = leadDay.cutOff;
const LOOK_EVERY_MS = 1000;

interface Cut {
  readonly before: LedBefore;
  readonly mark: LeadMark;
  /** Where the groups are by the clock. */
  readonly place: Ms;
  /** They wait for a start that was agreed ahead, UTC milliseconds. */
  readonly startsAt?: number | undefined;
}

/** Leading that a page which was closed left under way; nothing when all groups are done by now. */
export function useCutOff(
  open: OpenSheet | undefined,
  before: LedBefore | undefined,
): Cut | undefined {
  const { clock } = useApp();
  const [, look] = useState(0);
  const mark = before?.mark;
  useEffect(() => {
    if (mark === undefined) return;
    const timer = setInterval(() => look((n) => n + 1), LOOK_EVERY_MS);
    return () => clearInterval(timer);
  }, [mark]);
  if (before === undefined || mark === undefined || open?.key !== before.key) return undefined;
  const plan = leadPlanOf(open.outline, before.choice);
  if (plan === undefined) return undefined;
  const startsAt = agreedStartOf(mark, clock.now());
  if (startsAt !== undefined) return { before, mark, place: mark.place, startsAt };
  const place = placeByClock(mark, leadTimeline(plan).total, clock.now());
  return place === undefined ? undefined : { before, mark, place };
}

/** One question: are the groups still out there, or do they still wait for their start? */
export function CutOff({
  open,
  before,
  mark,
  place,
  startsAt,
}: Cut & { readonly open: OpenSheet }) {
  const { session } = useApp();
  const watches = useSettings((s) => mediumOf(s) === 'screen');
  const [silent, setSilent] = useState(watches);
  const ready = useLed(open, before.choice, silent ? 'screen' : 'sound', mark);
  const said =
    startsAt === undefined
      ? {
          title: words.title,
          body: mark.holding ? words.holding(timeOfDay(mark.wall)) : words.moving,
          goOn: words.goOn(placeSaid(place)),
          leave: words.leave,
        }
      : {
          title: agreedStart.cutOffTitle,
          body: agreedStart.cutOff(timeOfDay(startsAt)),
          goOn: agreedStart.goOn,
          leave: agreedStart.letGo,
        };
  return (
    <Screen
      title={said.title}
      sub={open.sheet.title}
      back={{ href: deskAt(open.key), name: leadDay.back }}
      foot={
        <>
          <LeadFoot
            ready={ready}
            silent={silent}
            onSilent={() => setSilent(true)}
            name={said.goOn}
          />
          <button type="button" className="button wide" onClick={() => session.getState().close()}>
            {said.leave}
          </button>
        </>
      }
    >
      <p>{said.body}</p>
    </Screen>
  );
}
