/** Copying a session across the weeks or down the groups, with a step up. */

import { ms } from '../domain/units.ts';
import type { StepUp } from '../domain/workshop/edit.ts';
import { listed, stretches } from './grammar.ts';
import { length } from './times.ts';

export type Along = 'weeks' | 'groups';

/** Where a copy goes, by name; weeks have their number (from 1) too. */
export interface Where {
  readonly name: string;
  readonly week?: number;
}

/** "Dunlin and Curlew", "Week 2", "Weeks 2 to 4 and 6". */
function named(places: readonly Where[]): string {
  const weeks = places.flatMap(({ week }) => week ?? []);
  if (weeks.length < 2) return listed(places.map(({ name }) => name));
  return `Weeks ${listed(stretches(weeks))}`;
}

const BEFORE: Readonly<Record<Along, string>> = {
  weeks: 'in the week before',
  groups: 'for the group before',
};

const WHICH = { hard: 'the hardest steps', easy: 'the easier steps' } as const;

function change(step: StepUp, along: Along): string {
  if (step.kind === 'same') return 'the same session.';
  const than = BEFORE[along];
  if (step.kind === 'sets') return `this session, each time with one set more than ${than}.`;
  const by = `${length(ms(Math.abs(step.by)))} ${step.by > 0 ? 'longer' : 'shorter'}`;
  return `this session, each time with ${WHICH[step.kind]} ${by} than ${than}.`;
}

export const fill = {
  open: { weeks: 'Copy to later weeks', groups: 'Copy to the groups after this' },
  title: { weeks: 'Copy to later weeks', groups: 'Copy to the groups after this' },
  step: 'From one to the next',
  steps: {
    same: 'The same',
    hard: 'Hard steps longer',
    easy: 'Easier steps shorter',
    sets: 'One set more',
  },
  by: 'By',
  howFar: 'How far',
  week: (n: number): string => `Week ${n}`,
  upTo: (name: string, count: number): string => (count === 1 ? `${name} only` : `Up to ${name}`),
  will: (places: readonly Where[], step: StepUp, along: Along): string =>
    `${named(places)} ${places.length === 1 ? 'gets' : 'get'} ${change(step, along)}`,
  kept: (places: readonly Where[]): string =>
    `${named(places)} ${places.length === 1 ? 'is' : 'are'} kept as written.`,
  nothing: 'All of these are kept as written: nothing would change.',
  /** A step up that this session has nothing for. */
  noUp: 'This session has nothing that this would change. It is copied as it is.',
  stops: (name: string): string => `From ${name} on it cannot grow further this way.`,
  last: (name: string): string => `${name} then is:`,
  undo: 'What stands there now is replaced. Undo brings it back.',
  copy: 'Copy it',
  cancel: 'Leave it',
  unwritten: 'Write the session first; then it can be copied.',
  unreadable: 'Put the text right first; then it can be copied.',
} as const;
