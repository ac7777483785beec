/** What a leader may want to look at again. */
import type { ProgrammeWarning, WarningCode } from '../domain/review/warning.ts';
import { capital } from './words.ts';

const of = (warning: ProgrammeWarning, key: string): string => String(warning.detail?.[key] ?? '');

const km = (metres: string): string => `${Number((Number(metres) / 1000).toFixed(1))} km`;

/** The event by its name, which may still be missing while a programme is written. */
const event = (warning: ProgrammeWarning): string => of(warning, 'event').trim() || 'the event';

/** What distance is counted with; a session without running needs one pace only. */
const paces = (warning: ProgrammeWarning): string =>
  warning.detail?.running === undefined
    ? `${of(warning, 'walking')} per km`
    : `${of(warning, 'running')} per km running and ${of(warning, 'walking')} walking`;

const WHAT: Readonly<Record<string, string>> = { run: 'running', brisk: 'brisk walking' };

const SENTENCES: Readonly<Record<WarningCode, (warning: ProgrammeWarning) => string>> = {
  'ends-apart': (w) =>
    `The main set ends at ${of(w, 'end')}, ${of(w, 'apart')} ${of(w, 'when')} the other groups (${of(w, 'common')}).`,
  'warm-up-none': () => 'This does not begin with walking. Five minutes or more warm the body up.',
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
  'session-longer': (w) =>
    `This session lasts ${of(w, 'now')}, ${of(w, 'percent')} % more than the longest of the weeks before (${of(w, 'before')}).`,
  'run-longer': (w) =>
    w.detail?.band === 'large'
      ? `The longest run without a walk is ${of(w, 'now')}: more than twice the ${of(w, 'before')} of the weeks before.`
      : `The longest run without a walk is ${of(w, 'now')}, ${of(w, 'percent')} % more than any before (${of(w, 'before')}).`,
  'run-first': (w) =>
    `Here this group runs for the first time, ${of(w, 'now')} without a walk. A minute or so is a gentler start.`,
  behind: (w) =>
    `${capital(of(w, 'now'))} of ${WHAT[of(w, 'what')] ?? ''} at most in this week; ${of(w, 'below')}, the group before this one, has ${of(w, 'other')}.`,
  'target-jump': (w) =>
    `The effort target rises from ${of(w, 'before')} to ${of(w, 'now')} of 10. One point at a time is easier to feel.`,
  'step-jump': (w) =>
    `The hardest step is ${of(w, 'now')} of 10. Until now this group did ${of(w, 'before')} at most.`,
  'not-lighter': (w) =>
    w.detail?.now === undefined
      ? `This week leads up to ${event(w)} and is hardly lighter than the weeks before, for all groups.`
      : `This week leads up to ${event(w)} and is hardly lighter: main sets of ${of(w, 'now')} in all, against ${of(w, 'before')} in the fullest of the weeks before.`,
  'never-continuous': (w) =>
    `No run in the programme is longer than ${of(w, 'now')} without a walk. To run on, this group would need one of ${of(w, 'asked')} or more; running and walking in turn is a good way too.`,
  'distance-short': (w) =>
    `At ${paces(w)}, the farthest session (${of(w, 'now')}) covers about ${km(of(w, 'metres'))}. ${capital(event(w))} is ${km(of(w, 'goal'))}: about ${of(w, 'minutes')} min at the same mix.`,
};

/** One sentence or two; where it is stands in the warning's path. */
export const programmeWarning = (warning: ProgrammeWarning): string =>
  SENTENCES[warning.code](warning);
