/** What a leader may want to look at again. */
import type { ProgrammeWarning } from '../domain/programme/check.ts';

const of = (warning: ProgrammeWarning, key: string): string => String(warning.detail?.[key] ?? '');

const SENTENCES: Readonly<Record<ProgrammeWarning['code'], (warning: ProgrammeWarning) => string>> =
  {
    'ends-apart': (w) =>
      `The main set ends at ${of(w, 'end')}, ${of(w, 'apart')} ${of(w, 'when')} the other groups (${of(w, 'common')}).`,
    'warm-up-none': () =>
      'This does not begin with walking. Five minutes or more warm the body up.',
    'warm-up-short': (w) =>
      `Only ${of(w, 'length')} of walking at the start. Five minutes or more warm the body up.`,
    'cool-down-none': () =>
      'This does not end with walking. Five minutes or more let the body settle.',
    'cool-down-short': (w) =>
      `Only ${of(w, 'length')} of walking at the end. Five minutes or more let the body settle.`,
    'main-short': (w) =>
      `The main set is ${of(w, 'main')} of ${of(w, 'all')}: less than half of the session.`,
    'no-recovery': () =>
      'A run is repeated with nothing in between. If a walk belongs to it, put both in brackets.',
    'sessions-over': (w) =>
      `${of(w, 'sessions')} sessions are written, and the week has ${of(w, 'max')} at most.`,
  };

/** One sentence or two; where it is stands in the warning's path. */
export const programmeWarning = (warning: ProgrammeWarning): string =>
  SENTENCES[warning.code](warning);
