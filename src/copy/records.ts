/** Keeping the record and moving it: calendar, files, backup, and what a backup would change. */
import type { BackupCode } from '../domain/exchange/backup-read.ts';
import type { NotTakenWhy } from '../domain/exchange/merge-programmes.ts';
import type { NotTaken, StoreReport } from '../domain/exchange/restore.ts';
import { day, timeOfDay } from './times.ts';

export const records = {
  title: 'Backup and calendar',
  sub: 'What you did lives on this phone alone. Here you put it somewhere safe, or on another phone.',
  back: 'Settings',
  working: 'One moment.',
  failed: 'This phone’s storage could not be read. Nothing was changed. Open the app again.',
  notLoaded:
    'A part of the app could not be fetched. Nothing was changed. Go online once and try again.',

  kept: 'How safe it is here',
  persisted: 'The browser has agreed to keep it, also when space runs short.',
  notPersisted:
    'The browser may tidy it away when space runs short, or when Towpath is not opened for some weeks.',
  unknown: 'This browser does not say whether it keeps it. Save a backup now and then.',
  ask: 'Ask the browser to keep it',
  refused:
    'The browser did not agree. Put Towpath on the home screen, open it from there, and ask again.',

  backup: 'A backup',
  backupBody:
    'One file with everything: programmes, your group, every session and what you said about it. Save one before you change phones, and now and then in between.',
  backupCare:
    'Anyone who opens the file can read it, notes and niggles too. Keep it where only you get at it.',
  backupKeys:
    'If you lead a group: your keys are not in it, and nothing that people told you is. Keys have a backup of their own; boards have a locked file, on the board under “Keep and hand over”.',
  saveBackup: 'Save a backup',
  given: 'Given out. Look that it arrived where you wanted it.',

  restore: 'Take a backup in',
  restoreBody:
    'On a new phone, or when you have used two. You see first what would change. Nothing here is lost, and doing it twice does no harm.',
  choose: 'Choose the file',
  chooseOther: 'Choose another file',
  previewTitle: 'What is in this file',
  take: 'Take it in',
  leave: 'Leave it',
  done: 'It is in. This phone now has what both had.',
  nothingNew: 'Everything in it is here already. There is nothing to take in.',

  calendar: 'Your sessions in your calendar',
  calendarBody:
    'A file with a date for each session that is still to come. Your calendar reminds you, not Towpath.',
  programme: 'Which programme?',
  days: 'On which days?',
  daysHelp: (min: number, max: number): string =>
    `Your leader says ${times(min, max)} a week. Leave a day between two.`,
  time: 'At what time?',
  alarm: 'Remind me',
  alarms: { none: 'No', '0': 'At the time', '30': '30 min before', '60': '1 hour before' },
  saveCalendar: 'Save the calendar file',
  calendarAgain:
    'Changed your mind? Save it anew: sessions keep their names, and most calendars then move them. Dates that are no longer wanted have to be deleted there.',
  calendarTime: 'The time is the one on the clock where you are, also on a journey.',
  nothingToPlan: 'No session is left to plan on these days.',
  noDays: 'Choose at least one day.',
  noGroup: 'Choose a group first. Then its sessions can go into a calendar.',
  chooseGroup: 'Choose a group',

  log: 'The list of sessions',
  logBody:
    'For a spreadsheet, for a doctor or physiotherapist, or for yourself. Notes, niggles and warning signs are in it.',
  csv: 'As a table (CSV)',
  json: 'For other programs (JSON)',
} as const;

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven'] as const;

function times(min: number, max: number): string {
  const [least, most] = [COUNTS[min] ?? String(min), COUNTS[max] ?? String(max)];
  if (min === max) return min === 1 ? 'once' : `${least} times`;
  return `${least} ${max === min + 1 ? 'or' : 'to'} ${most} times`;
}

export const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
export const WEEKDAY_NAMES = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const;

/** "17 sessions, from Tue, 2 March 2027 to Thu, 8 April 2027." */
export function calendarLine(sessions: number, first: string, last: string): string {
  return sessions === 1
    ? `One session, on ${day(first)}.`
    : `${sessions} sessions, from ${day(first)} to ${day(last)}.`;
}

const PROBLEMS: Readonly<
  Record<BackupCode | 'full' | 'lost' | 'newer' | 'not-ours' | 'not-loaded', string>
> = {
  calendar: 'This is a calendar file. Open it in your calendar; a backup is a .json file.',
  damaged:
    'This was a backup, but it is too damaged: not one record in it is whole. Nothing was changed.',
  empty: 'There is nothing in this file.',
  foreign: 'This is not a file of Towpath. Nothing was changed.',
  full: 'This phone has no space left. Nothing was taken in, nothing here was changed. Make room and try again.',
  keys: 'This is the backup of a leader’s keys. It is taken in under “I lead a group”, with its passphrase.',
  lost: 'The file or this phone’s storage could not be read just now. Nothing was changed. Try again.',
  newer: 'A newer Towpath has been on this phone. Update this one first. Nothing was changed.',
  'not-loaded': records.notLoaded,
  'not-ours': 'This phone’s storage could not be written. Nothing was changed.',
  programme: 'This is a programme, not a backup. Open it under “Open a link, a code or a message”.',
  table: 'This is the list of sessions as a table. It cannot be read back; a backup can.',
  'too-large': 'This file is far too large for a backup. It was not opened.',
};

/** Why nothing was taken from a file, and what the file is where that is known. */
export const restoreProblem = (code: keyof typeof PROBLEMS): string => PROBLEMS[code];

const NAMES: Readonly<Record<string, readonly [one: string, many: string]>> = {
  log: ['session', 'sessions'],
  programmes: ['programme', 'programmes'],
  choices: ['group chosen', 'groups chosen'],
  following: ['way through a programme', 'ways through a programme'],
  people: ['note of what was told to a leader', 'notes of what was told to a leader'],
  sheets: ['programme in writing', 'programmes in writing'],
  sent: ['programme sent', 'programmes sent'],
  settings: ['set of settings', 'sets of settings'],
};

/** "3 sessions"; what this version has no word for is a record. */
function counted(store: string, n: number): string {
  const [one, many] = NAMES[store] ?? ['record', 'records'];
  return `${n} ${n === 1 ? one : many}`;
}

const DAMAGE = {
  none: '',
  cut: 'The file is cut off: its end is missing. What is whole in it can be taken in.',
  changed:
    'The file is not as it was written: something in it was changed since. Look at it twice.',
} as const;

interface File {
  readonly kind: 'backup' | 'log';
  readonly madeAt?: number;
  readonly newer: boolean;
  readonly damage: keyof typeof DAMAGE;
  readonly days?: { readonly first: string; readonly last: string };
  readonly programmes: readonly string[];
  readonly report: readonly StoreReport[];
}

/** What a file is, in sentences: what kind, from when, how whole, and what is in it. */
export function aboutFile(file: File, localDate: (at: number) => string): readonly string[] {
  const { kind, madeAt, newer, damage, days, programmes, report } = file;
  const what = kind === 'backup' ? 'A backup' : 'The list of sessions, without anything else';
  const made =
    madeAt === undefined ? '' : `, made ${day(localDate(madeAt))} at ${timeOfDay(madeAt)}`;
  const sessions = report.find(({ store }) => store === 'log')?.inFile ?? 0;
  return [
    `${what}${made}.`,
    days === undefined
      ? 'No sessions are in it.'
      : `${counted('log', sessions)}, ${days.first === days.last ? `on ${day(days.first)}` : `from ${day(days.first)} to ${day(days.last)}`}.`,
    programmes.length === 0 ? '' : `${programmes.map((title) => `“${title}”`).join(', ')}.`,
    newer
      ? 'A newer Towpath made it. What this one knows of is taken in; the rest stays in the file. Keep the file, update, and take it in again.'
      : '',
    DAMAGE[damage],
  ].filter((line) => line !== '');
}

/** In the order in which they matter to a person. */
const TITLES: Readonly<Record<string, string>> = {
  log: 'Sessions',
  programmes: 'Programmes',
  choices: 'Your group',
  following: 'Your weeks and pauses',
  people: 'What you told a leader',
  sheets: 'Programmes in writing',
  sent: 'Programmes you sent',
  settings: 'Settings',
};

function changeLine({ store, here, inFile, added, changed }: StoreReport): string {
  if (inFile === 0) return 'not in the file; what is here stays';
  if (added + changed === 0) return 'nothing new; what is here stays';
  if (store === 'settings')
    return here === 0 ? 'as in the file' : 'taken where nothing was chosen here';
  const stays = here - changed;
  return [
    added > 0 ? `${added} new` : '',
    changed > 0 ? `${changed} with something newer` : '',
    stays > 0 ? `${stays} here ${stays === 1 ? 'stays as it is' : 'stay as they are'}` : '',
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** What taking a file in does to each kind of thing, as name and sentence. */
export const changesOf = (
  report: readonly StoreReport[],
): readonly { readonly store: string; readonly name: string; readonly line: string }[] =>
  Object.entries(TITLES).flatMap(([store, name]) => {
    const found = report.find((each) => each.store === store);
    if (found === undefined || found.here + found.inFile === 0) return [];
    return [{ store, name, line: changeLine(found) }];
  });

const REASONS: Readonly<Record<NotTakenWhy, string>> = {
  shape: 'cannot be right, so it was damaged or changed',
  newer: 'was written by a newer Towpath',
  unknown: 'is something this Towpath does not keep',
  programme: 'cannot be read',
  signature: 'has a signature that is wrong, or cannot be checked here',
  retired: 'was signed with a key that its leader has replaced',
  'unreadable-here': 'lies here too, written by a newer Towpath, and is left alone',
};

/** "2 sessions: each cannot be right, so it was damaged or changed." One line for each reason. */
export function notTakenLines(notTaken: readonly NotTaken[]): readonly string[] {
  const counts = new Map<string, { store: string; why: NotTakenWhy; n: number }>();
  for (const { store, why } of notTaken) {
    const key = `${store} ${why}`;
    const there = counts.get(key) ?? { store, why, n: 0 };
    counts.set(key, { ...there, n: there.n + 1 });
  }
  return [...counts.values()].map(
    ({ store, why, n }) => `${counted(store, n)}: ${n === 1 ? 'it' : 'each'} ${REASONS[why]}.`,
  );
}

export const notTakenTitle = 'Not taken in';
