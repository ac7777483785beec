import { type ReactNode, useState } from 'react';
import { useLocation } from 'wouter';
import { agreedStart as words } from '../../copy/agreed-start.ts';
import { running } from '../../copy/running.ts';
import { inWords, left, timeOfDay } from '../../copy/times.ts';
import { ms } from '../../domain/units.ts';
import { useApp, useSession } from '../app-context.tsx';
import { KeptFocus, useKeptFocus } from './KeptFocus.tsx';
import { Notices } from './Notices.tsx';
import { PressLong } from './PressLong.tsx';
import { useArrival } from './Screen.tsx';
import { useSecondTap } from './use-second-tap.ts';

interface WaitProps {
  /** Who waits, where it is not the group of this phone. */
  readonly who?: string | undefined;
  /** What comes first, where it is not one activity. */
  readonly first?: ReactNode;
}

/** The wait for a start that was agreed ahead: when, in how long, what comes first. */
export function AgreedStartWait({ who, first = <First /> }: WaitProps) {
  const state = useSession((s) => s.view.state);
  const silent = state === 'waiting-silent';
  const late = useSession((s) => s.view.late);
  const time = useStartTime();
  const missed = useSession((s) => silent && s.view.wait?.left === 0);
  const title = missed
    ? words.missedTitle(time)
    : silent
      ? words.silentTitle
      : words.startsAt(time);
  const heading = useArrival(running.title);
  const group = useKeptFocus<HTMLElement>();
  const secondTap = useSecondTap();
  return (
    <main className="run" data-state={state}>
      <p role="status" className="for-readers">
        {silent ? title : late ? running.lateKeep : ''}
      </p>
      <Whose who={who} />
      <section className="run-now">
        <h1 ref={heading} tabIndex={-1} className="run-word trouble">
          {title}
          {!silent && <span aria-hidden="true">{words.andIn}</span>}
        </h1>
        {!missed && <Countdown />}
        {first}
        {silent && (
          <p className="run-standing">{missed ? words.missedBody : words.silentBody(time)}</p>
        )}
      </section>
      <div className="run-ground">
        <Notices />
        {!silent && <HowTo />}
      </div>
      <section
        ref={group}
        className="controls"
        aria-label={running.controls}
        onClickCapture={secondTap.drop}
      >
        {missed ? <Missed /> : <Waiting silent={silent} />}
        <KeptFocus>
          <Leave />
        </KeptFocus>
      </section>
    </main>
  );
}

/** The agreed time by the clock of this phone. */
function useStartTime(): string {
  const { clock } = useApp();
  const at = useSession((s) => s.view.wait?.startsAt ?? 0);
  return timeOfDay(at, clock.zoneTime(at).offsetMinutes);
}

function Whose({ who }: Pick<WaitProps, 'who'>) {
  const programme = useSession((s) => s.view.programmeTitle);
  const group = useSession((s) => s.view.groupName);
  return (
    <header className="run-where">
      <p>{programme}</p>
      <p>{who ?? group}</p>
    </header>
  );
}

function Countdown() {
  const time = useSession((s) => left(s.view.wait?.left ?? ms(0)));
  const spoken = useSession((s) =>
    inWords(ms(Math.ceil((s.view.wait?.left ?? 0) / 10_000) * 10_000)),
  );
  return (
    <p className="run-left figures" role="timer" aria-label={words.until(spoken)}>
      {time}
    </p>
  );
}

function First() {
  const first = useSession((s) => s.view.segment);
  if (first === undefined) return null;
  return (
    <p className="run-then figures">
      {words.first(first.activity, left(ms(first.end - first.start)))}
    </p>
  );
}

/* Not a live region: the voice says it, as on the running screen, and what is late is said above. */
function HowTo() {
  const late = useSession((s) => s.view.late);
  const caption = useSession((s) => s.view.caption);
  const sound = useSession((s) => s.view.medium === 'sound');
  if (late) return <p className="notice">{running.lateKeep}</p>;
  return (
    <>
      <p>{sound ? words.pocket : words.seen}</p>
      <p className="caption">{caption}</p>
    </>
  );
}

function Waiting({ silent }: { silent: boolean }) {
  const session = useApp().session;
  return (
    <button
      type="button"
      className={silent ? 'button primary' : 'button'}
      onClick={() => session.getState().goOn()}
    >
      {silent ? words.waitOn : words.now}
    </button>
  );
}

function Missed() {
  const session = useApp().session;
  return (
    <div className="controls-pair">
      <button type="button" className="button" onClick={() => session.getState().goOn()}>
        {words.fromTheStart}
      </button>
      <button
        type="button"
        className="button primary"
        onClick={() => session.getState().afterGap('catch-up')}
      >
        {words.catchUp}
      </button>
    </div>
  );
}

/** Leads back to the session's page, where it can be started or waited for anew. */
function Leave() {
  const session = useApp().session;
  const choice = useSession((s) => s.view.choice);
  const [, go] = useLocation();
  const [asks, setAsks] = useState(false);
  const leave = (): void => {
    session.getState().end();
    // A leader's page follows by itself.
    if (choice === undefined) return;
    go(`/p/${choice.programmeId}/${choice.week}/${choice.session}`, { replace: true });
  };
  if (!asks)
    return (
      <PressLong
        className="button wide end"
        name={words.leave}
        how={words.leaveHow}
        onLong={leave}
        onShort={() => setAsks(true)}
      />
    );
  return (
    <fieldset className="notice">
      <legend className="for-readers">{words.leaveAsk}</legend>
      <p aria-hidden="true">{words.leaveAsk}</p>
      <div className="row">
        <button type="button" className="button" onClick={() => setAsks(false)}>
          {words.leaveNo}
        </button>
        <button type="button" className="button" onClick={leave}>
          {words.leaveYes}
        </button>
      </div>
    </fieldset>
  );
}
