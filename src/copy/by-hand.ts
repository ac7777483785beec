import type { FieldCode } from '../domain/log/fields.ts';

/** A session that the app did not lead, written down; and one put right. */
export const byHand = {
  title: 'Write a session down',
  sub: 'One that you did without the app running.',
  titleEdit: 'Put it right',
  programme: 'Programme',
  group: 'Group',
  week: 'Week',
  weekN: (n: number, focus: string): string => `Week ${n}: ${focus}`,
  session: 'Session',
  sessionN: (n: number, minutes: string): string => `Session ${n}, ${minutes}`,
  date: 'Day',
  time: 'Began at',
  zone: (zone: string): string => `By the clocks of ${zone}, where it began.`,
  how: 'How?',
  hows: {
    'by-hand': ['Alone, or with a friend', ''],
    there: ['With the group', 'The leader was there'],
  },
  amount: 'How much did you do?',
  all: 'All of it',
  part: 'Another length',
  partHelp: 'Less than all of it, or more',
  minutes: 'Minutes of walking and running',
  minutesHelp: 'Pauses left out. What is less than the plan is counted from its start.',
  keep: 'Leave it as it was counted',
  same: (day: string, time: string): string =>
    `Another session of yours is written down for the same time: ${day}, ${time}. Both stay unless you remove one.`,
  save: 'Save',
  next: 'Save, and say how hard it was',
  nothing: 'There is no programme with sessions for a group on this phone.',
  wrong: (n: number): string => (n === 1 ? 'One thing cannot be.' : `${n} things cannot be.`),
} as const;

const FIELD: Readonly<Record<FieldCode, string>> = {
  'date-none': 'Choose the day.',
  'date-future': 'That day is still to come. Write a session down once it is over.',
  'date-old': 'That is a very long time ago. Is the year right?',
  'time-none': 'Say roughly when it began.',
  'time-skipped':
    'The clocks were put forward that night, and this time was left out. Take one an hour later.',
  'time-future': 'That time is still to come. Write a session down once it is over.',
  'ends-future': 'It would still be going on. Is the time right, and the length?',
  'minutes-none': 'Say how many minutes.',
  'minutes-number': 'Write the minutes as a number, such as 25.',
  'minutes-long': 'That is more than six hours. Is it in minutes?',
  'distance-number': 'Write kilometres as a number, such as 3.2.',
  'distance-fast': 'Nobody runs that far in that time. Is it in kilometres, and on foot?',
};

/** Why what was typed cannot be, in a sentence. */
export const fieldProblem = (code: FieldCode): string => FIELD[code];

/** On the page of a session. */
export const there = {
  title: 'Done without the app?',
  was: 'I was there',
  wasHelp: 'With the group, just now: it is written down as done, and you say how hard it was.',
  hand: 'Write it down by hand',
  already: 'Written down today',
} as const;
