import type { Detail } from '../programme/problem.ts';

/** Why an edit was not made. `src/copy/refusals.ts` has a sentence for each. */
export const REFUSALS = [
  'date',
  'groups-full',
  'id',
  'last-group',
  'last-session',
  'last-week',
  'number',
  'reminders-full',
  'sessions-full',
  'shape',
  'text-long',
  'unreadable',
  'weeks-full',
] as const;

/** Why an edit was not made. `src/copy/refusals.ts` has a sentence for each. */
export interface EditRefusal {
  readonly code: (typeof REFUSALS)[number];
  readonly detail?: Detail;
}
