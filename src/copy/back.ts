/** Looking back: what the plots say, in words. */
import type { AgainstGuidance } from '../domain/back/guidance.ts';
import { type Ms, ms } from '../domain/units.ts';
import { dateFormat } from './date-format.ts';
import { place } from './times.ts';

const FORMATS = {
  short: dateFormat({ day: 'numeric', month: 'short', timeZone: 'UTC' }),
  long: dateFormat({ day: 'numeric', month: 'long', timeZone: 'UTC' }),
  full: dateFormat({
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  }),
} as const;

/** A day since 1970-01-01 as people write it: `1 Mar`, `1 March`, `1 March 2027`. */
export const dayText = (day: number, how: keyof typeof FORMATS): string =>
  FORMATS[how](day * 86_400_000);

const yearOf = (day: number): number => new Date(day * 86_400_000).getUTCFullYear();

/** Whole minutes, as the plots and tables show them. */
export const wholeMinutes = (value: number): number => Math.round(value / 60_000);

const minutes = (value: number): string => {
  const whole = wholeMinutes(value);
  return `${whole} ${whole === 1 ? 'minute' : 'minutes'}`;
};

/** Minutes and seconds of a stretch: `7:30`. */
export const stretch = (value: Ms): string => place(value);

const sessions = (n: number): string => `${n} ${n === 1 ? 'session' : 'sessions'}`;

/** One number of a week, for a sentence. */
export interface Told {
  readonly monday: number;
  readonly value: number;
}

/** The most and the latest of some weeks: what a look at the plot tells. */
function mostAndLatest(weeks: readonly Told[], say: (value: number) => string): string {
  const latest = weeks.at(-1);
  if (latest === undefined) return '';
  const most = weeks.reduce((best, week) => (week.value > best.value ? week : best), latest);
  const week = ({ monday }: Told) => `the week of ${dayText(monday, 'long')}`;
  return most.monday === latest.monday
    ? `Most in ${week(most)}, the latest: ${say(most.value)}.`
    : `Most in ${week(most)}: ${say(most.value)}. In ${week(latest)}, the latest: ${say(latest.value)}.`;
}

export const back = {
  title: 'Look back',
  empty: 'Nothing to look back on yet. The first plot appears with your first session.',
  span: (from: number, to: number): string =>
    `${dayText(from, yearOf(from) === yearOf(to) ? 'long' : 'full')} to ${dayText(to, 'full')}`,
  earlier: 'Earlier weeks',
  later: 'Later weeks',
  turning: 'Which weeks',
  numbers: 'The numbers',
  week: 'Week of',
  session: 'Session',
  total: 'Together',
  noneThisWeek: 'No session this week so far. Rest is part of it.',
  thisWeek: (n: number, moved: number, walk: number, run: number, extra: number): string =>
    `This week so far: ${sessions(n)}, ${wholeMinutes(moved)} min. ${wholeMinutes(walk)} walked, ${wholeMinutes(run)} run${extra > 0 ? `, ${wholeMinutes(extra)} extra` : ''}.`,

  minutes: {
    title: 'Minutes walked and run',
    lead: 'What you went through, warm-up and cool-down included. Jogging counts as running.',
    walk: 'Walked',
    run: 'Run',
    still: 'Standing, stretching',
    extra: 'Extra',
    extraHelp:
      'Extra: minutes that you added or did again. Towpath does not know whether you walked or ran them.',
    said: (weeks: readonly Told[]): string =>
      `Minutes walked and run, week by week. ${mostAndLatest(weeks, minutes)}`,
  },

  guidance: {
    title: 'Against what is advised',
    lead: 'The World Health Organization advises adults to be active for 150 to 300 minutes a week at a moderate effort. A minute of vigorous effort counts as two.',
    moderate: 'Moderate, most walking',
    vigorous: 'Vigorous, jogging and running, counted twice',
    advised: 'What is advised: from 150 to 300',
    moderateShort: 'Moderate',
    vigorousShort: 'Vigorous',
    counted: 'Counted',
    // A week below is named by its number alone: no list of shortfalls.
    standing: { below: '', within: ', as advised', above: ', above 300' } satisfies Record<
      AgainstGuidance,
      string
    >,
    notAll:
      'Only sessions in Towpath are in here. Walking to the shop, cycling, digging: that counts too, in minutes of any length. Less than 150 is still far better than none.',
    how: 'How each kind counts',
    howBody:
      'By the energy that it takes, in MET: 1 MET is sitting still. Moderate is 3.0 to 5.9, vigorous 6.0 and more. A jog no faster than a brisk walk takes about as much as the walk; Towpath cannot see your speed and counts it as vigorous. Stretching and slow walking do you good and count for nothing here.',
    activity: 'Kind',
    met: 'MET',
    code: 'Code',
    counts: 'Counts',
    times: { light: 'not', moderate: 'once', vigorous: 'twice' },
    noCode: 'none',
    sources:
      'Guidance: Bull et al. 2020, Br J Sports Med 54:1451-62. Energy: Adult Compendium of Physical Activities 2024 (Herrmann et al., J Sport Health Sci 13:6-12) by its codes; slow walk and stretch from that of 2011. Which code a word of the plan stands for is our choice.',
    said: (weeks: readonly Told[]): string =>
      `Minutes as the guidance counts them, week by week, against 150 to 300. ${mostAndLatest(weeks, minutes)}`,
  },

  felt: {
    title: 'How it felt, and how it was meant',
    lead: 'One mark for each session, on the scale from 0, rest, to 10, all you have. A point more or less is ordinary.',
    felt: 'Felt',
    harder: 'Two points or more harder than meant',
    easier: 'Two points or more easier than meant',
    target: 'Meant',
    date: 'Day',
    none: 'not said',
    only: (n: number): string => `The plot shows the latest ${n} sessions; the table has them all.`,
    said: (all: number, rated: number, near: number, harder: number, easier: number): string =>
      rated === 0
        ? `${sessions(all)}, none with an answer to how hard it felt.`
        : `How hard ${sessions(all)} felt, against how hard they were meant. ${rated} with an answer: ${near} within a point, ${harder} harder than meant, ${easier} easier.`,
  },

  load: {
    title: 'Towpath load',
    lead: 'How hard it felt, times the minutes that you moved: our own number for what a week asked of you. It compares only with your own other weeks, and more is not better.',
    load: 'Load',
    rated: 'With an answer',
    ratedOf: (rated: number, all: number): string => `${rated} of ${all}`,
    partly: 'Dashed, with a +: not every session has an answer yet, so it was more.',
    bar: 'Load',
    said: (weeks: readonly Told[]): string =>
      `Load, week by week. ${mostAndLatest(weeks, (value) => String(Math.round(value)))}`,
  },

  longest: {
    title: 'Longest run without a walk',
    lead: 'The longest you ran on in each week, in minutes and seconds. Pauses with Hold are not seen.',
    run: 'Longest run',
    none: 'not known',
    said: (weeks: readonly Told[]): string =>
      weeks.length === 0
        ? 'No session here tells how long you ran without a walk.'
        : `Longest run without a walk, week by week. ${mostAndLatest(weeks, (value) => stretch(ms(value)))}`,
  },

  byHand: (n: number): string =>
    `${sessions(n)} written down afterwards: what was walked and run is taken from the plan, from its start for as long as you said, or in its own proportions.`,
  notKnown: (n: number): string =>
    `${sessions(n)} whose plan cannot be read: in the load, and in nothing else.`,
} as const;
