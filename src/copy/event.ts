/** Towards the event: what an estimate says, and what it rests on. */
import type { Assumed } from '../domain/back/event-limits.ts';
import { kmPerHour, milesPerHour } from '../domain/back/pace.ts';
import type { RiegelProblem } from '../domain/back/riegel.ts';
import { type Ms, ms, msOfSeconds } from '../domain/units.ts';
import { place } from './times.ts';

export type EventBasis = 'assumed' | 'own' | 'measured' | 'trial';

const two = (n: number): string => String(n).padStart(2, '0');

/** Minutes after midnight as a time of day: `10:40`. */
export const timeText = (minute: number): string =>
  `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;

/** A time range in whole minutes, rounded outwards: `40 to 57 min`, `55 min to 1 h`, `1 h 5 min to 1 h 20 min`. */
export function rangeText(low: Ms, high: Ms): string {
  const [from, to] = [Math.floor(low / 60_000), Math.ceil(high / 60_000)];
  if (to < 60) return `${from} to ${to} min`;
  const h = (n: number) => (n < 60 ? '' : `${Math.floor(n / 60)} h`);
  const min = (n: number) => (n % 60 === 0 ? '' : `${n % 60} min`);
  return [from, to].map((n) => `${h(n)} ${min(n)}`.trim()).join(' to ');
}

/** Minutes and seconds for a kilometre: `8:00`. */
export const paceText = (secondsPerKm: number): string => place(msOfSeconds(secondsPerKm));

const km = (metres: number): string => `${metres / 1000} km`;

export const event = {
  title: (name: string): string => `Towards ${name}`,
  distance: (metres: number, date: string): string =>
    date === '' ? `${km(metres)}.` : `${km(metres)}, on ${date}.`,
  weeks: 'The weeks',
  howLong: 'About how long',
  perKm: (low: number, high: number): string =>
    `From ${paceText(low)} to ${paceText(high)} minutes for a kilometre.`,
  notGoal:
    'A range, because nobody knows the day. Neither end is a goal: go by your breath, and walk whenever you wish.',
  basis: 'Reckoned from',
  bases: {
    assumed: ['Usual speeds', 'Walking and running in turn as in your group’s longest session'],
    own: ['Your own speeds', 'The same turns, at a pace that you know'],
    measured: ['Sessions you measured', 'Those with a distance in your record'],
    trial: ['An all-out trial', 'For those who race: as fast as you could, once'],
  } satisfies Record<EventBasis, readonly [string, string]>,

  walkPace: 'Walking, minutes for a kilometre',
  runPace: 'Running, minutes for a kilometre',
  pace: (seconds: number): string =>
    `${paceText(seconds)} (${kmPerHour(seconds).toFixed(1)} km/h, ${milesPerHour(seconds).toFixed(1)} mph)`,
  trialMetres: 'Distance of the trial, metres',
  trialTime: 'Its time, minutes:seconds',
  trialTimeHelp: 'For instance 27:30',
  trialAsk: 'Give its distance and its time below.',
  problem: {
    distance: 'A distance is more than 0 metres.',
    'trial-time':
      'The formula stands for times from 3:30 to 3:50:00 only. Shorter and longer efforts are another kind.',
    'event-time':
      'The event would take less than 3:30 or more than 3:50:00 by the formula, and there it says nothing.',
  } satisfies Record<RiegelProblem, string>,
  noMeasured: 'No session of the last eight weeks has a distance of a kilometre or more.',
  noMoving: 'No session of your group has walking or running in it, so nothing can be reckoned.',
  noGroup: 'Choose a group first: its sessions say how you walk and run in turn.',
  chooseGroup: 'Choose a group',

  start: 'Your start',
  finish: (from: string, to: string): string => `At the finish between ${from} and ${to}.`,
  closing:
    'If the course closes at some time, ask the organisers, and tell them how long you need.',

  assumes: 'What it assumes',
  assumptions: {
    walking: (fast: number, slow: number): string =>
      `Walking at ${paceText(fast)} to ${paceText(slow)} for a kilometre.`,
    running: (fast: number, slow: number): string =>
      `Running at ${paceText(fast)} to ${paceText(slow)} for a kilometre.`,
    assumed: [
      'The short end: turns as in the main set, at the faster speeds. The long end: as in the whole session, warm-up and cool-down included, at the slower ones.',
    ],
    own: (percent: number): string[] => [
      `Your paces, ${percent} % faster and slower, for wind, heat and company.`,
      'The short end: turns as in the main set. The long end: as in the whole session, warm-up and cool-down included.',
    ],
    measured: (n: number, faster: number, slower: number): string[] => [
      n === 1
        ? `The speed of the one session with a distance, ${faster} % faster to ${slower} % slower.`
        : `From ${faster} % faster than the fastest of ${n} sessions to ${slower} % slower than the slowest.`,
      'Whole sessions, warm-up and cool-down included. The distance as you wrote it down.',
    ],
    trial: (faster: number, slower: number): string[] => [
      `Riegel’s formula of 1981, ${faster} % faster to ${slower} % slower: the time grows a little faster than the distance.`,
      'It was fitted to records and trained runners. For walking and running in turn, or a trial that was not all you had, it says too little.',
      'An all-out trial is hard. It is for those who race already and have no niggle and no warning sign.',
    ],
  },
  session: (week: number): string => `The session is your group’s longest way, in week ${week}.`,
  always: 'An even path, a usual day, nothing that hurts, and no waiting at the start.',
  sources: 'Where the numbers come from',
  source: ({ value, unit, standing, from }: Assumed): string =>
    `${unit === 's per km' ? `${paceText(value)} for a kilometre` : unit === '%' ? `${value} %` : value}: ${from}${standing === 'published' ? '' : ' (common practice, no source)'}.`,

  warningTitle: 'First things first',
  warning: (date: string): string =>
    `You noted a warning sign on ${date}. No estimate until a doctor has said yes to more sessions.`,
  warningSigns: 'All stop signs',
} as const;

/** `27:30` or `1:02:05` as a length; nothing for what is no time. */
export function readTime(text: string): Ms | undefined {
  const found = /^\s*(?:(\d{1,2}):)?(\d{1,3}):([0-5]\d)\s*$/.exec(text);
  if (found === null) return undefined;
  const [, h = '0', m = '0', s = '0'] = found;
  return ms((Number(h) * 3600 + Number(m) * 60 + Number(s)) * 1000);
}
