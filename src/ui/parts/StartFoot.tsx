import type { MouseEvent } from 'react';
import type { Choice, Medium } from '../../app/session-contract.ts';
import { before } from '../../copy/before.ts';
import { useApp, usePack, useSession, useSettings } from '../app-context.tsx';
import { AgreedStart } from './AgreedStart.tsx';
import { useDetour } from './came-from.ts';
import { KeptFocus } from './KeptFocus.tsx';
import { type NextStep, nextStep } from './next-step.ts';
import { useSecondTap } from './use-second-tap.ts';

interface StartFootProps {
  readonly choice: Choice;
  readonly medium: Medium;
  readonly silent: boolean;
  readonly onSilent: () => void;
  /** Getting ready failed; `onRetry` tries it again. */
  readonly failed: boolean;
  readonly onRetry: () => void;
  /** Something comes before any session: Start is there, and does not ask to be pressed. */
  readonly waits?: boolean;
}

/** The one decision of the session's page. */
export function StartFoot(props: StartFootProps) {
  const { choice, medium, silent, failed, onSilent, onRetry, waits = false } = props;
  const settings = useSettings((s) => s);
  const pack = usePack((p) => p.pack);
  const state = useSession((s) => (isFor(s.view.choice, choice) ? s.view.state : 'composing'));
  const busyElsewhere = useSession((s) => s.view.busyElsewhere);
  const step = nextStep(settings, pack, { state, busyElsewhere, failed }, medium);
  return (
    <Step
      step={step}
      silent={silent || medium === 'screen'}
      onSilent={onSilent}
      onRetry={onRetry}
      waits={waits}
    />
  );
}

const isFor = (a: Choice | undefined, b: Choice): boolean =>
  a !== undefined &&
  a.programmeId === b.programmeId &&
  a.groupId === b.groupId &&
  a.week === b.week &&
  a.session === b.session;

/** What brings somebody to the start, in a session of their own and in one that is led. */
export interface StepProps {
  readonly step: NextStep;
  readonly silent: boolean;
  readonly onSilent: () => void;
  readonly onRetry: () => void;
  readonly waits: boolean;
  /** What Start is called. */
  readonly name?: string;
  /** Whether a time can be agreed; not for what was cut off and goes on. */
  readonly together?: boolean;
}

/** What comes before the start, one thing at a time, and the start. */
export function Step(props: StepProps) {
  return (
    <KeptFocus heir="first">
      <StepNow {...props} />
    </KeptFocus>
  );
}

function StepNow(props: StepProps) {
  const { step, silent, onSilent, onRetry, waits, name, together = true } = props;
  const app = useApp();
  const secondTap = useSecondTap();
  const detour = useDetour();
  switch (step.name) {
    case 'elsewhere':
      return <p role="status">{before.elsewhere}</p>;
    case 'cautions':
      return <Primary onClick={() => detour('/cautions')}>{before.readFirst}</Primary>;
    case 'pocket-check':
      return (
        <>
          <p className="small">{before.checkHelp}</p>
          <Primary onClick={() => detour('/pocket')}>{before.checkFirst}</Primary>
          <button
            type="button"
            className="text-button center"
            onClick={() => void app.settings.getState().change({ pocketCheckSkipped: true })}
          >
            {before.checkSkip}
          </button>
        </>
      );
    case 'voice-coming':
      return (
        <>
          <p className="small">{before.comingHelp}</p>
          <div className="progress" aria-hidden="true">
            <i style={{ width: `${step.percent}%` }} />
          </div>
          <Waiting>{before.voiceComing(step.percent)}</Waiting>
        </>
      );
    case 'voice-missing':
    case 'voice-damaged':
      return (
        <>
          <p role="status">
            <strong>{step.name === 'voice-missing' ? before.missing : before.damaged}</strong>{' '}
            {before.missingHelp}
          </p>
          <div className="row">
            <button
              type="button"
              className="button"
              onClick={() => void app.pack.getState().retry()}
            >
              {before.retry}
            </button>
            <button type="button" className="button" onClick={onSilent}>
              {before.goSilent}
            </button>
          </div>
        </>
      );
    case 'app-missing':
      return (
        <>
          <p role="status">{before.appMissing}</p>
          <Primary onClick={onRetry}>{before.tryAgain}</Primary>
        </>
      );
    case 'composing':
      return <Waiting>{before.composing}</Waiting>;
    case 'start':
      return (
        <>
          <Primary
            calm={waits}
            onClick={(event) => {
              secondTap.note(event);
              app.session.getState().start();
            }}
          >
            {name ?? (silent ? before.startSilent : before.start)}
          </Primary>
          {together && <AgreedStart />}
        </>
      );
  }
}

interface PrimaryProps {
  readonly onClick: (event: MouseEvent) => void;
  readonly calm?: boolean;
  readonly children: string;
}

function Primary({ onClick, calm = false, children }: PrimaryProps) {
  return (
    <button
      type="button"
      className={calm ? 'button wide' : 'button primary wide'}
      onClick={onClick}
    >
      {children}
    </button>
  );
}

/** Keeps its place and its focus while it waits, so that Start appears where it was. */
function Waiting({ children }: { children: string }) {
  return (
    <button type="button" className="button wide" aria-disabled="true" aria-live="polite">
      {children}
    </button>
  );
}
