/** Finding a group: the questions, and the answer with its reason. */
import type { Short } from '../domain/advice/able.ts';
import type { Arrival, Ask } from '../domain/advice/demand.ts';
import type { Compared, GroupAnswer } from '../domain/advice/find-group.ts';
import type { Group } from '../domain/programme/programme.ts';
import { ms } from '../domain/units.ts';
import { length, minutes } from './times.ts';

const choice = (n: number, last: number): string =>
  n === 0 ? 'Not yet' : n === last ? `${n} min or more` : `About ${n} min`;

export const findGroupCopy = {
  title: 'Find my group',
  lead: 'Answer for today, not for next month. Nothing of this is kept.',
  walk: 'How long can you walk briskly without stopping?',
  walkHelp: 'Briskly: as if late, breath deeper, still talking in whole sentences.',
  run: 'How long can you run without stopping?',
  runHelp: 'However slowly. A guess is enough.',
  choice,
  wish: 'What would you like to be able to do?',
  wishes: {
    walk: 'Walk it',
    mix: 'Walk and run in turn',
    run: 'Run all the way',
    any: 'I do not mind',
  } satisfies Readonly<Record<Arrival | 'any', string>>,
  gently: 'Is there anything that should make you start gently?',
  gentlyHelp:
    'Months without moving much, an illness or injury, a birth, a doctor’s word, or just a feeling. What it is stays with you.',
  gentlyYes: 'Yes, start gently',
  gentlyNo: 'No',
  gentlyCare: 'If it is something about your health, ask a doctor before the first session.',
  notYet: 'With all four answered, the group stands here.',
  answer: (name: string): string => `${name} would suit you`,
  take: (name: string): string => `Take ${name}`,
  others: 'The other groups',
  free: 'Any group can be yours. Changing later is one tap, and keeps everything.',
} as const;

/** Short runs to the second, longer ones in minutes. */
const runOf = (run: number): string => (run < 300_000 ? length(ms(run)) : minutes(ms(run)));

/** "runs of up to 2 min", "walking". */
function asks({ run, brisk, feet }: Ask): string {
  const long = `sessions of up to ${minutes(feet)}`;
  if (run > 0) return `runs of up to ${runOf(run)} in ${long}`;
  return brisk > 0 ? `brisk walks of up to ${minutes(brisk)} in ${long}` : `walking, in ${long}`;
}

const mostly = (share: number): string =>
  share > 60 ? 'mostly running' : share < 40 ? 'mostly walking' : 'about half of each';

const ENDS: Readonly<Record<Arrival, (last: Ask) => string>> = {
  walk: ({ feet }) => `walking for up to ${minutes(feet)}`,
  mix: ({ run, share }) =>
    `walking and running in turn, ${mostly(share)}, with runs of up to ${runOf(run)}`,
  run: ({ run }) => `running on, up to ${runOf(run)} without a walk`,
};

/** What a group asks first and where it leads, in two sentences. */
export const groupAsks = ({
  first,
  last,
  arrives,
}: Pick<Compared, 'first' | 'last' | 'arrives'>): string =>
  `It begins with ${asks(first)}. It leads to ${ENDS[arrives](last)}.`;

const SHORT: Readonly<Record<Short['what'], (short: Short) => string>> = {
  run: ({ asks: a, able }) =>
    `has runs of ${runOf(a)} in its first weeks, long ${able === 0 ? 'for first ones' : 'to begin with'}`,
  'first-runs': () => 'is mostly running from the start, much for first runs',
  walk: ({ asks: a }) =>
    `has ${minutes(ms(a))} of brisk walking in one go in its first weeks, more than you said`,
  feet: ({ asks: a }) =>
    `has sessions of ${minutes(ms(a))} in its first weeks, long against what you said`,
  hard: ({ asks: a }) =>
    `has steps of ${Math.round(a / 10)} of 10 in its first weeks, hard for a gentle start`,
};

const REASONS: Readonly<
  Record<GroupAnswer['why']['code'], (why: GroupAnswer['why'], next: string) => string>
> = {
  only: ({ short }) =>
    short === undefined
      ? 'It is the only group of this programme, and it starts within what you said you can do.'
      : `It is the only group of this programme, and it ${SHORT[short.what](short)}: go slower, and do as much as is comfortable.`,
  most: () => 'It is the most demanding group, and it starts within what you said you can do.',
  fits: ({ short }, next) =>
    short === undefined
      ? 'It starts within what you said you can do.'
      : `It starts within what you said you can do; ${next} ${SHORT[short.what](short)}.`,
  wish: (_, next) =>
    `It leads where you would like to go; you could start in ${next} too, which leads to more running.`,
  gently: (_, next) => `It is a gentle start; without that, ${next} would fit too.`,
  gentlest: ({ short }) =>
    short === undefined
      ? 'It is the gentlest group there is.'
      : `It is the gentlest group, and it ${SHORT[short.what](short)}: go slower, and do as much as is comfortable.`,
};

const nameIn = (groups: readonly Group[], id: string | undefined): string =>
  groups.find((group) => group.id === id)?.name ?? '';

/** Why this group, in a sentence. */
export const groupReason = ({ why }: GroupAnswer, groups: readonly Group[]): string =>
  REASONS[why.code](why, nameIn(groups, why.next));

/** How another group compares, in a sentence. */
export function comparedLine({ than, short, beyondWish }: Compared): string {
  if (short !== undefined) return `Harder at first: it ${SHORT[short.what](short)}.`;
  if (than === 'gentler') return 'A gentler start, well within what you said you can do.';
  return beyondWish
    ? 'You could start in it; it leads to more running than you asked for.'
    : 'You could start in it.';
}
