import { useDeferredValue, useMemo } from 'react';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { reviewOutline } from '../../domain/review/review.ts';
import type { ProgrammeWarning } from '../../domain/review/warning.ts';

/** What may deserve another look. Typing does not wait for it. */
export function useOutlineChecks(outline: OpenSheet['outline']): readonly ProgrammeWarning[] {
  const settled = useDeferredValue(outline);
  return useMemo(() => reviewOutline(settled), [settled]);
}
