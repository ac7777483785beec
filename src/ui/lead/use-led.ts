import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Led, Medium } from '../../app/session-contract.ts';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { type LeadChoice, leadPlanOf } from '../../domain/lead/choose.ts';
import type { LeadMark } from '../../domain/lead/cut-off.ts';
import { useApp } from '../app-context.tsx';

/** What is to be led, on its way to being ready. */
export interface ReadyToLead {
  /** Nothing: no group is left that could be led. */
  readonly led: Led | undefined;
  readonly medium: Medium;
  /** The piece of the app that composes could not be fetched. */
  readonly failed: boolean;
  readonly prepare: () => void;
}

/** Gets a choice ready to be started, and anew whenever it changes. */
export function useLed(
  { key, sheet, outline }: OpenSheet,
  choice: LeadChoice,
  medium: Medium,
  from?: LeadMark,
): ReadyToLead {
  const { session } = useApp();
  const [failed, setFailed] = useState(false);
  const { id, title } = sheet;
  const said = JSON.stringify(choice);
  const led = useMemo((): Led | undefined => {
    const chosen = JSON.parse(said) as LeadChoice;
    const plan = leadPlanOf(outline, chosen);
    if (plan === undefined) return undefined;
    return { key, programme: { id, title }, choice: chosen, plan, ...(from && { from }) };
  }, [key, id, title, outline, said, from]);
  const prepare = useCallback(() => {
    setFailed(false);
    if (led === undefined) return;
    session
      .getState()
      .prepare(led, medium)
      .catch(() => setFailed(true));
  }, [session, led, medium]);
  useEffect(prepare, [prepare]);
  return { led, medium, failed, prepare };
}
