/** The page on which a programme is drafted: what is asked, and what is said beside the draft. */
import { effortOfTen } from './effort.ts';

const range = (min: number, max: number): string => (min === max ? `${min}` : `${min} to ${max}`);

export const draftForm = {
  title: 'Draft for me',
  sub: 'Answer a few questions and every week is proposed for every group. You can change all of it afterwards.',
  back: 'My programme',
  weeks: 'Weeks',
  weeksHelp: 'The event is in the last one.',
  weeksFit: (weeks: number): string => `By these dates the event is in week ${weeks}.`,
  weeksTake: (weeks: number): string => `Make it ${weeks} weeks`,
  start: 'First Monday',
  event: 'Day of the event',
  optional: 'May stay empty.',
  distance: 'Distance of the event, in km',
  session: 'Longest session, in minutes',
  sessionHelp: 'Warm-up and cool-down included: 5 minutes of walking each.',
  timeTitle: 'Time and event',
  groupsTitle: 'Groups',
  groupsHelp:
    'From the gentlest to the most demanding. Answer for the person in the group who can do least, as things are today.',
  group: (n: number): string => `Group ${n}`,
  name: 'Name',
  walk: 'Longest comfortable brisk walk today, in minutes',
  run: 'Longest comfortable run today, in minutes',
  runHelp: '0 if nobody has run yet.',
  arrive: 'Where it should arrive',
  add: 'Add a group',
  remove: (name: string): string => `Remove ${name}`,
  added: (name: string): string => `${name} is added at the end.`,
  removed: (name: string): string => `${name} is removed.`,
  draft: 'Draft it',
  wrong: (count: number): string =>
    count === 1
      ? 'One answer is missing or does not fit.'
      : `${count} answers are missing or do not fit.`,
  working: 'One moment, every week is worked out.',
  noWay:
    'With these pinned sessions no draft keeps to its bounds. Unpin one of them, or change an answer.',
  pinned: (count: number): string =>
    count === 1
      ? 'One session is pinned. It stays as it is, and the rest is drafted around it.'
      : `${count} sessions are pinned. They stay as they are, and the rest is drafted around them.`,
  pinnedLost: (count: number): string =>
    count === 1
      ? 'One pinned session has no place in this draft: its week or group is gone.'
      : `${count} pinned sessions have no place in this draft: their weeks or groups are gone.`,
  limitsTitle: 'Where the numbers come from',
  limits: [
    'Groups end their main sets together; running rises by 4 minutes a week at most, one stretch by 30 % or a minute and a half, a main set by 5 minutes. The week of the event has two thirds at most.',
    'These are habits of careful leaders, and no limits of safety. How fast beginners may go on is contested: rises of 10 % a week did not prevent injuries (Buist 2008). The clearest sign so far is one run much longer than any before it (Frandsen 2025, experienced runners).',
    'Warm-up and cool-down of 5 minutes follow the American College of Sports Medicine and Mayo Clinic. Paces are assumed: 8 minutes per km running, 12 walking.',
  ],
} as const;

export const draftResult = {
  title: 'A draft',
  sub: 'Nothing is changed yet. Read it as you would read somebody else’s proposal.',
  caution:
    'It is arithmetic and knows nobody’s knees. Whoever is unwell, in pain or unsure asks a doctor first, and anyone may repeat a week.',
  answers: 'Who arrives',
  weeks: 'Week by week',
  week: (n: number, focus: string): string => `Week ${n}: ${focus}`,
  weekLine: (effort: number, min: number, max: number): string =>
    `${range(min, max)} times. Effort ${effortOfTen(effort)}.`,
  totals: (all: string, main: string): string => `${all}, main set ${main}`,
  pinned: 'Pinned',
  apart: 'Does not end with the others, because a session of this week is pinned.',
  replaces:
    'Sessions that are not pinned are replaced, with effort and times per week. Undo brings everything back.',
  take: 'Use this draft',
  change: 'Change my answers',
} as const;
