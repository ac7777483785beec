import { type RefObject, useEffect, useMemo } from 'react';
import { Redirect, useParams } from 'wouter';
import type { Led } from '../../app/session-contract.ts';
import { groupsLine, leading as words } from '../../copy/lead-day.ts';
import { running } from '../../copy/running.ts';
import { length, place, timeOfDay } from '../../copy/times.ts';
import { leadAt } from '../../domain/lead/lead-at.ts';
import { ms } from '../../domain/units.ts';
import { useApp, useSession } from '../app-context.tsx';
import { AgreedStartWait } from '../parts/AgreedStartWait.tsx';
import { GapDialog } from '../parts/GapDialog.tsx';
import { EndRow } from '../parts/RunSheet.tsx';
import { useArrival } from '../parts/Screen.tsx';
import { isOver, isUnderWay, isWaiting } from '../parts/session-state.ts';
import { leadDayAt } from '../workshop/addresses.ts';
import { GroupBlock } from './GroupBlock.tsx';
import type { Standing } from './group-moment.ts';
import { LeadControls } from './LeadControls.tsx';
import { LeadFirsts } from './LeadFirsts.tsx';
import { LeadOver } from './LeadOver.tsx';
import { LeadStrips } from './LeadStrips.tsx';
import { LeadWrong } from './LeadWrong.tsx';

/** All groups side by side, while they walk and run. */
export function Leading() {
  const { key } = useParams<{ key: string }>();
  const led = useSession((s) => s.view.lead);
  const state = useSession((s) => s.view.state);
  if (led?.key !== key) return <Redirect to={leadDayAt(key)} replace />;
  if (isOver(state)) return <LeadOver led={led} ended={state === 'ended-early'} />;
  if (!isUnderWay(state)) return <Redirect to={leadDayAt(key)} replace />;
  if (isWaiting(state))
    return (
      <div className="outdoors">
        <AgreedStartWait who={words.groups} first={<LeadFirsts led={led} />} />
      </div>
    );
  return (
    <div className="outdoors">
      <SideBySide led={led} />
      <Changes led={led} />
      <LeadWrong />
      <GapDialog />
    </div>
  );
}

function SideBySide({ led }: { led: Led }) {
  const session = useApp().session;
  const top = useArrival(words.title);
  useEffect(() => {
    session.getState().watch(true);
    return () => session.getState().watch(false);
  }, [session]);
  const { plan } = led;
  return (
    <main
      className="lead"
      data-groups={plan.groups.length}
      data-count={plan.groups.length > 4 ? 'many' : 'few'}
    >
      <Head led={led} top={top} />
      <div className="lead-groups">
        <Groups led={led} />
      </div>
      <div className="lead-ground">
        <Strips led={led} />
        <EndRow words={words} onEnd={() => session.getState().end()} />
      </div>
      <LeadControls />
    </main>
  );
}

function Head({ led, top }: { led: Led; top: RefObject<HTMLHeadingElement | null> }) {
  const total = useSession((s) => s.view.timeline?.total ?? ms(0));
  const at = useSession((s) => place(s.view.position));
  return (
    <header className="lead-top">
      <div className="run-where">
        <h1 ref={top} tabIndex={-1}>
          {words.sub(led.choice.week, led.choice.session)}
        </h1>
        <p className="figures">{words.gone(at, length(total))}</p>
      </div>
      <Notices />
    </header>
  );
}

/** What stands in the way, said once for all groups. */
function Notices() {
  const state = useSession((s) => s.view.state);
  const silent = useSession((s) => s.view.medium === 'screen');
  const awake = useSession((s) => s.view.awake);
  const late = useSession((s) => s.view.late);
  return (
    <div role="status">
      {state === 'holding' && <p className="notice">{words.held}</p>}
      {late && <p className="notice">{running.late}.</p>}
      {state === 'interrupted' && (
        <p className="notice">
          <strong>{running.interruptedTitle}.</strong> {running.interruptedBody}
        </p>
      )}
      {state === 'stalled' && (
        <p className="notice">
          <strong>{running.stalledTitle}.</strong> {running.stalledBody}
        </p>
      )}
      {silent && <p className="small">{running.silent}</p>}
      {!awake && <p className="small">{running.notAwake}</p>}
    </div>
  );
}

const STANDING: Readonly<Record<string, Standing>> = { running: 'going', holding: 'held' };

function Groups({ led: { plan } }: { led: Led }) {
  const { clock } = useApp();
  const position = useSession((s) => s.view.position);
  const state = useSession((s) => s.view.state);
  const gap = useSession((s) => s.view.gap);
  const late = useSession((s) => s.view.late);
  const standing = STANDING[state] ?? 'trouble';
  // Taken anew when time was lost, and not from second to second, so that no minute flickers.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const began = useMemo(() => clock.now() - position, [clock, standing, gap, late]);
  return leadAt(plan, position).map((now) => {
    const isKnown = standing === 'going' || now.state === 'done';
    const ends = isKnown ? timeOfDay(began + now.endsAt) : undefined;
    return <GroupBlock key={now.group.id} now={now} standing={standing} ends={ends} />;
  });
}

function Strips({ led: { plan } }: { led: Led }) {
  const position = useSession((s) => s.view.position);
  const total = useSession((s) => s.view.timeline?.total ?? ms(1));
  return <LeadStrips plan={plan} total={total} position={position} />;
}

/**
 * What a screen reader says by itself, at changes only, and only what no voice says: it would
 * talk over the words of the others.
 */
function Changes({ led: { plan } }: { led: Led }) {
  const text = useSession(({ view }) => {
    if (view.state !== 'running') return '';
    const silent = view.medium === 'screen';
    const told = leadAt(plan, view.position).filter(
      ({ group }) => silent || group.voice !== 'words',
    );
    return groupsLine(told);
  });
  return (
    <p role="status" className="for-readers">
      {text}
    </p>
  );
}
