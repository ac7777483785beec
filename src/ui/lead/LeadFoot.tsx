import { leadDay as words } from '../../copy/lead-day.ts';
import { usePack, useSession, useSettings } from '../app-context.tsx';
import { nextStep } from '../parts/next-step.ts';
import { Step } from '../parts/StartFoot.tsx';
import type { ReadyToLead } from './use-led.ts';

interface LeadFootProps {
  readonly ready: ReadyToLead;
  readonly silent: boolean;
  readonly onSilent: () => void;
  /** What the start is called, where it is not the usual one. */
  readonly name?: string;
}

/** The one decision: to start all groups, or what stands before that. */
export function LeadFoot({ ready, silent, onSilent, name }: LeadFootProps) {
  const { led, medium, failed, prepare } = ready;
  const settings = useSettings((s) => s);
  const pack = usePack((p) => p.pack);
  const state = useSession((s) => (s.view.lead === led ? s.view.state : 'composing'));
  const busyElsewhere = useSession((s) => s.view.busyElsewhere);
  if (led === undefined) return <p>{words.nobody}</p>;
  return (
    <Step
      step={nextStep(settings, pack, { state, busyElsewhere, failed }, medium)}
      silent={silent}
      onSilent={onSilent}
      onRetry={prepare}
      waits={false}
      together={led.from === undefined}
      name={name ?? (silent ? words.beginSilent : words.begin)}
    />
  );
}
