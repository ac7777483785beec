import { useCallback, useEffect, useState } from 'react';
import { useParams } from 'wouter';
import type { Choice, Medium } from '../../app/session-contract.ts';
import { before } from '../../copy/before.ts';
import { minutes, sentence } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import { PART, partLines, stripInWords } from '../../copy/words.ts';
import { PARTS } from '../../domain/programme/plan.ts';
import type { Programme, SessionPlan } from '../../domain/programme/programme.ts';
import { lengthOfPart } from '../../domain/timeline/totals.ts';
import { useApp, useProgrammes, useSettings } from '../app-context.tsx';
import { CareFirst } from '../now/CareFirst.tsx';
import { useNow, useSituation } from '../now/use-now.ts';
import { Manner, More, Reminders } from '../parts/BeforeMore.tsx';
import { EffortLine } from '../parts/EffortLine.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { mediumOf } from '../parts/next-step.ts';
import { sessionsOf, timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { StartFoot } from '../parts/StartFoot.tsx';
import { Strip } from '../parts/Strip.tsx';
import { WithoutApp } from '../parts/WithoutApp.tsx';

/** One session before it starts. */
export function Before() {
  const params = useParams<{ id: string; week: string; session: string }>();
  const week = Number(params.week);
  const session = Number(params.session);
  const programme = useProgrammes((p) => p.programmes.find((each) => each.id === params.id));
  const groupId = useProgrammes((p) => p.chosen[params.id ?? '']);
  const group = programme?.groups.find((each) => each.id === groupId);
  const plan = programme && group && sessionsOf(programme, group.id, week)[session - 1];
  const found = programme?.weeks[week - 1];
  if (programme === undefined || group === undefined || plan === undefined || found === undefined)
    return <NotHere />;
  const choice = { programmeId: programme.id, groupId: group.id, week, session };
  return (
    <Ready
      key={`${choice.programmeId} ${choice.groupId} ${week} ${session}`}
      choice={choice}
      programme={programme}
      plan={plan}
      sub={`${group.name}. ${sentence(found.focus)}`}
      target={found.effort}
    />
  );
}

interface ReadyProps {
  readonly choice: Choice;
  readonly programme: Programme;
  readonly plan: SessionPlan;
  readonly sub: string;
  readonly target: number;
}

function Ready({ choice, programme, plan, sub, target }: ReadyProps) {
  const app = useApp();
  const usual = useSettings(mediumOf);
  const [silent, setSilent] = useState(false);
  const [failed, setFailed] = useState(false);
  const medium: Medium = silent ? 'screen' : usual;
  const timeline = timelineOf(plan.plan);
  const { care } = useNow(useSituation(programme, choice.groupId));

  const { programmeId, groupId, week, session } = choice;
  const prepare = useCallback(() => {
    setFailed(false);
    const { prepare } = app.session.getState();
    prepare({ programmeId, groupId, week, session }, medium).catch(() => setFailed(true));
  }, [app, programmeId, groupId, week, session, medium]);
  useEffect(prepare, [prepare]);

  return (
    <Screen
      title={weeks.session(week, session)}
      sub={sub}
      back={{ href: `/p/${programmeId}`, name: programme.title }}
      foot={
        <StartFoot
          choice={choice}
          medium={medium}
          silent={silent}
          onSilent={() => setSilent(true)}
          failed={failed}
          onRetry={prepare}
          waits={care !== undefined}
        />
      }
    >
      <CareFirst programme={programme} group={groupId} />
      <Strip timeline={timeline} height={132} label={stripInWords(plan.plan)} named />
      <dl className="facts">
        <div>
          <dt>{before.total}</dt>
          <dd className="figures">{minutes(timeline.total)}</dd>
        </div>
        <div>
          <dt>{before.main}</dt>
          <dd className="figures">{minutes(lengthOfPart(timeline, 'main'))}</dd>
        </div>
        <div className="wide">
          <dt>{before.effort}</dt>
          <dd>
            <EffortLine target={target} />
          </dd>
          <dd className="small soft plain">{before.effortHelp}</dd>
        </div>
      </dl>
      <Coming plan={plan} />
      <Manner medium={medium} silent={silent} />
      <Reminders programme={programme} />
      <WithoutApp choice={choice} />
      <More choice={choice} plan={plan} />
    </Screen>
  );
}

function Coming({ plan }: { plan: SessionPlan }) {
  return (
    <section className="stack">
      <h2>{before.coming}</h2>
      <dl className="parts">
        {PARTS.filter((part) => plan.plan[part].length > 0).map((part) => (
          <div key={part} data-part={part}>
            <dt>{PART[part]}</dt>
            {partLines(plan.plan[part]).map((line, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place in the plan
              <dd key={i}>{line}</dd>
            ))}
          </div>
        ))}
      </dl>
    </section>
  );
}
