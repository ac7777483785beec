import type { LogEntry } from '../domain/log/entry.ts';

export const log = {
  title: 'Done',
  empty: 'Nothing here yet. A session appears when it ends.',
  count: (n: number): string => `${n} ${n === 1 ? 'session' : 'sessions'}`,
  more: (n: number): string => `Show ${n} more`,
  entry: (week: number, session: number): string => `Week ${week}, session ${session}`,
  outcome: { finished: 'To the end', 'ended-early': 'Ended early' } satisfies Record<
    LogEntry['outcome'],
    string
  >,
  doneOf: (done: string, total: string): string => `${done} of ${total}`,
  effort: (given: number, target: number): string => `Effort ${given}, meant ${target}`,
  unrated: 'Not yet said how hard',
  rate: 'Say how hard it was',
  change: 'Change the answer',
  warning: 'Warning sign',
  warningFelt: 'Felt. Ask a doctor before the next session.',
  niggle: 'Niggle',
  note: 'Note',
  when: 'When',
  group: 'Group',
  done: 'Done',
  active: 'Moving, with repeats and extra minutes',
  effortTitle: 'Effort',
  plan: 'The plan of that day',
  strip: 'What was covered',
  stripHelp: 'Drawn full: gone through. Dotted: left out.',
  notThere: 'This session is not in the record of this phone.',
} as const;
