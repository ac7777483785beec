/** For the leader who writes a programme: the shelf, the table, weeks and details. */
import { many } from './grammar.ts';

export const shelf = {
  title: 'I lead a group',
  sub: 'Write a programme, look it through, send it. No account, no server.',
  mine: 'My programmes',
  unread:
    'This phone cannot read what is kept on it just now. Nothing is lost: it is tried again every few seconds.',
  untitled: 'Without a title',
  size: (weeks: number, groups: number): string =>
    `${many(weeks, 'week')}, ${many(groups, 'group')}`,
  changed: (when: string): string => `changed ${when}`,
  sent: (revision: number): string => `revision ${revision} sent`,
  open: (title: string): string => `Open ${title}`,
  copy: 'Make a copy',
  copyTitle: (title: string): string => `${title} (copy)`,
  remove: 'Remove',
  removeAsk: (title: string): string =>
    `Remove “${title}” from this phone? What you sent stays with those who have it.`,
  removeYes: 'Yes, remove it',
  removeNo: 'Keep it',
  begin: 'Begin a programme',
  blank: 'From nothing',
  draft: 'With a draft made for me',
  example: 'From the example',
  file: 'Open my programme file',
  fileHelp: 'A .json file. It stays on this phone until you send it.',
  schema: 'What may stand in a file (JSON Schema)',
  saveExample: 'Save the example as a file',
  backTo: 'My programmes',
} as const;

export const desk = {
  untitled: 'A programme without a title',
  kept: 'Kept on this device.',
  keeping: 'Keeping it …',
  notKept:
    'This device could not keep the last change. It is still here while the page is open, and is tried again. Save the file to be safe.',
  undo: 'Undo',
  redo: 'Do it again',
  details: 'Title, dates, groups',
  draft: 'Draft for me',
  paper: 'On paper',
  lead: 'Lead it together',
  saveFile: 'Save as a file',
  send: 'Go on to sending',
  table: 'Weeks by groups',
  weekColumn: 'Week',
  week: (n: number): string => `Week ${n}`,
  noFocus: 'No focus yet',
  times: (min: number, max: number): string =>
    min === max ? `${min} times` : `${min} to ${max} times`,
  together: (n: number): string => `session ${n} together`,
  main: (length: string): string => `main ${length}`,
  empty: 'Not written yet',
  broken: 'Cannot be read',
  pinned: 'Stays as it is',
  notes: (n: number): string => many(n, 'note'),
  cell: (week: number, group: string, session: number, of: number): string =>
    of > 1 ? `Week ${week}, ${group}, session ${session}` : `Week ${week}, ${group}`,
  addWeek: 'Add a week',
  back: 'All weeks',
  hear: 'Hear it',
  sentIn: (revision: number): string => `as sent in revision ${revision}`,
  changedSince: (revision: number): string => `changed since revision ${revision}`,
  movedSince: (revision: number): string => `sent as another week in revision ${revision}`,
  newSince: (revision: number): string => `new since revision ${revision}`,
  past: 'over',
  now: 'this week',
  midway: (revision: number): string =>
    `Revision ${revision} is out. Weeks that are over were walked and run as they were sent: changing them now changes nobody’s past. Send the next revision when you are done.`,
} as const;

export const checks = {
  title: 'Worth another look',
  body: 'You can send it as it is. You know your group.',
  none: 'Nothing stands out. Look through the weeks once more.',
  count: (n: number): string => `${many(n, 'thing')} worth another look`,
  why: 'Where this comes from',
  here: 'Worth another look here',
  missing: (n: number): string =>
    n === 1
      ? 'One session is not written yet or cannot be read.'
      : `${n} sessions are not written yet or cannot be read.`,
} as const;

export const week = {
  title: (n: number): string => `Week ${n}`,
  focus: 'Focus, in a sentence',
  focusHelp: 'Everyone sees it above their session.',
  effort: 'How hard it should feel',
  effortLine: (rating: number, words: string): string => `${rating} of 10: ${words}`,
  timesMin: 'Times, at least',
  timesMax: 'Times, at most',
  together: 'Done together',
  none: 'None',
  session: (n: number): string => `Session ${n}`,
  earlier: 'Move a week earlier',
  later: 'Move a week later',
  add: 'Add a week after it',
  remove: 'Remove this week',
} as const;

export const details = {
  title: 'Title, dates, groups',
  name: 'Title',
  leader: 'Your name, as people know you',
  start: 'First day, a Monday',
  startHelp:
    'Weeks begin on Monday: of another day, its Monday is taken. Leave it empty if people may begin when they like.',
  goal: 'What it leads to',
  distance: 'Distance in km',
  goalDate: 'Day of the event',
  groups: 'Groups, from the gentlest to the fastest',
  groupsHelp: 'People choose among them in this order. Names are shown, not spoken. Up to eight.',
  onward: 'On to the weeks',
  groupName: (n: number): string => `Name of group ${n}`,
  groupFor: (n: number): string => `Who group ${n} is for`,
  up: (name: string): string => `Move ${name} up`,
  down: (name: string): string => `Move ${name} down`,
  remove: (name: string): string => `Remove ${name}`,
  newName: 'Name of a new group',
  newFor: 'Who it is for',
  add: 'Add the group',
  reminders: 'Reminders while they move',
  spoken: 'Said by the voice, in the quiet stretches',
  free: 'Your own, shown and not spoken',
  newReminder: 'A reminder of your own',
  addReminder: 'Add it',
  removeReminder: (text: string): string => `Take out: ${text}`,
} as const;

export const sendOwn = {
  notYet: 'It cannot be sent yet',
  notYetBody: (n: number): string =>
    n === 1 ? 'One thing is wrong. Go to it:' : `${n} things are wrong. Go to each:`,
} as const;
