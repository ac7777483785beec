/** The first screen of a programme: what is next, and how things stand. */
import type { ReEntry } from '../domain/advice/course.ts';
import type { Missed } from '../domain/advice/missed.ts';
import type { NextSession, WeekCount } from '../domain/advice/next-session.ts';
import type { Now } from '../domain/advice/now.ts';
import type { Rest } from '../domain/advice/rest.ts';
import type { WeekName } from '../domain/advice/week-states.ts';
import type { Pause } from '../domain/log/following.ts';
import { day } from './times.ts';

const sessions = (n: number): string => `${n} ${n === 1 ? 'session' : 'sessions'}`;
const days = (n: number): string => `${n} ${n === 1 ? 'day' : 'days'}`;

const PAUSED: Readonly<Record<Pause['why'], string>> = {
  holiday: 'On holiday',
  illness: 'Getting well',
  other: 'On a pause',
};

const BACK: Readonly<Record<ReEntry['why'], string>> = {
  holiday: 'after the holiday',
  illness: 'after being ill',
  other: 'after the pause',
  gap: 'after a while',
};

export const nowCopy = {
  title: 'Now',
  how: 'How things stand',
  weekNames: {
    done: 'done',
    part: 'partly done',
    missed: 'not done',
    paused: 'a pause',
    passed: 'left out',
    now: 'now',
    coming: 'coming',
  } satisfies Readonly<Record<WeekName, string>>,
  need: {
    due: 'Next for you',
    extra: 'One more, if you like',
    later: 'Next',
  } satisfies Readonly<Record<NextSession['need'], string>>,
  waits: 'It waits',
  from: (date: string): string => `From ${day(date)}.`,
  through: 'All weeks are done. Any session can be done again.',
  before: (n: number, date: string): string =>
    n === 1 ? 'It starts tomorrow.' : `It starts in ${days(n)}, on ${day(date)}.`,
  together: 'Done together, as a group.',
  ways: {
    all: 'More of this programme',
    back: 'Look back',
    event: 'Towards the event',
    tell: 'Tell the leader',
    records: 'Backup and calendar',
  },
  startNow: 'Begin at week 1 now',
  pause: 'Take a pause',
  pauseWhyTitle: 'Why',
  pauseSince: 'Since',
  pauseSinceWrong: 'Choose today or a day before it.',
  pauseUntil: 'Until, if you know',
  pauseUntilHelp: 'Empty: until you say that you are back.',
  pauseUntilWrong: 'Choose today or a day to come.',
  pauseBegin: 'Pause the programme',
  resume: 'I am back',
  pauseWhy: { holiday: 'Holiday', illness: 'Illness', other: 'Something else' } satisfies Readonly<
    Record<Pause['why'], string>
  >,
} as const;

/** "1 of 2 to 3 this week". */
export function countLine({ done, min, max, is }: WeekCount): string {
  const meant = min === max ? `${min}` : `${min} to ${max}`;
  if (is === 'full') return `${sessions(done)} this week: that is all it needs.`;
  if (is === 'enough') return `${sessions(done)} this week: enough, one more if you like.`;
  return `${done} of ${meant} this week.`;
}

/** Days to the event, by its name. */
export function eventLine({ days: n }: NonNullable<Now['event']>, name: string): string {
  if (n < 0) return `${name} was ${days(-n)} ago.`;
  if (n === 0) return `${name} is today.`;
  return n === 1 ? `${name} is tomorrow.` : `${days(n)} to ${name}.`;
}

const RESTS: Readonly<Record<Rest['code'], (until: string) => string>> = {
  'two-hard': (until) =>
    `Two hard days came one after the other. Rest, or an easy walk; the next session is best from ${day(until)}.`,
  'two-days': (until) =>
    `Two days running is plenty. Legs get stronger while they rest: from ${day(until)} again.`,
  today: () => 'Done for today. A day between sessions is part of the plan.',
};

export const restLine = ({ code, until }: Rest): string => RESTS[code](until);

/** Missed days, met kindly and with a plan. */
export function missedLine({ what, done, min, fits }: Missed): string {
  const plan =
    fits === 0
      ? 'Go on next week.'
      : `${sessions(fits)} still ${fits === 1 ? 'fits' : 'fit'} into this week, with a day between.`;
  if (what === 'this-week')
    return `This week was short, and that is fine. Nothing has to be made up for. ${plan}`;
  const was = done === 0 ? 'no session' : `${done} of ${min}`;
  return `Last week had ${was}, and that happens. Nothing has to be made up for. ${plan}`;
}

export function pauseLine({ why, to }: Pause): string {
  const until = to === undefined ? '' : ` until ${day(to)}`;
  const ill = why === 'illness' ? ' Rest until you are well, and never go out with a fever.' : '';
  return `${PAUSED[why]}${until}. The programme waits.${ill}`;
}

/** Where to come back in. */
export function reEntryLine({ days: n, week, back, why }: ReEntry): string {
  const place =
    back === 0
      ? `Go on with week ${week}`
      : `Week ${week}, ${back} ${back === 1 ? 'week' : 'weeks'} back, is a gentle way in`;
  const ill = why === 'illness' ? ' Only once you are well, and never with a fever.' : '';
  return `Welcome back ${BACK[why]}: ${days(n)} without a session. ${place}. You can take another week.${ill}`;
}

/** The leader's calendar is past week 1, and nothing was done yet. */
export function lateLine({ week, over }: NonNullable<Now['late']>, weeks: number): string {
  const where =
    week > weeks ? 'The dates of this programme are over.' : `The group is in week ${week}.`;
  const event =
    over === undefined
      ? ''
      : over === 0
        ? ' There is time for all of it before the event.'
        : ` Its last ${over === 1 ? 'week' : `${over} weeks`} would then lie past the event.`;
  return `${where} You can begin at week 1 today.${event}`;
}
