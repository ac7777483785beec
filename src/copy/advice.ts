/** What a good leader would say: what was seen, what follows, and what would change it. */
import type { Advice } from '../domain/advice/advice.ts';
import type { Action, Finding, FindingCode } from '../domain/advice/finding.ts';
import type { Mind } from '../domain/advice/minds.ts';
import type { NigglePlace } from '../domain/log/entry.ts';
import type { Detail } from '../domain/programme/problem.ts';
import type { Group } from '../domain/programme/programme.ts';
import { ms } from '../domain/units.ts';
import { day, length } from './times.ts';
import { PLACE } from './words.ts';

const text = (detail: Detail, key: string): string => String(detail[key] ?? '');
const many = (n: unknown, one: string, more: string): string => (Number(n) === 1 ? one : more);
const count = (n: unknown, one: string, more = `${one}s`): string =>
  `${String(n)} ${many(n, one, more)}`;

/** "left knee", "shins on both sides"; a place that has no name is "the same spot". */
function where(detail: Detail): string {
  const place = text(detail, 'place') as NigglePlace;
  if (place === 'other' || !(place in PLACE)) return 'one spot';
  const name = PLACE[place].toLowerCase();
  const { side } = detail;
  if (side === 'both') return `${name}, on both sides,`;
  return side === undefined ? name : `${String(side)} ${name}`;
}

const PAUSE: Readonly<Record<string, string>> = {
  holiday: 'a holiday',
  illness: 'an illness',
  other: 'a pause',
};

const AGAINST: Readonly<Record<string, (detail: Detail) => string>> = {
  event: () => 'The event is near, so more now would hardly show by then.',
  sign: () => 'After a warning sign this stays as it is for four weeks.',
  niggle: () => 'A niggle is not long ago, so this stays as it is.',
  away: () => 'You were away for a while, so this stays as it is.',
  hardest: () => 'This is the most demanding group there is, so enjoy it as it is.',
  far: ({ longest }) =>
    Number(longest) > 0
      ? `Runs in the next group are far longer than your longest lately, ${length(ms(Number(longest) * 1000))}, so it is early for it.`
      : 'Runs in the next group are long for a first one, so it is early for it.',
};

/** What was seen, in a sentence. */
const SEEN: Readonly<Record<FindingCode, (detail: Detail) => string>> = {
  'warning-sign': (d) => `On ${day(text(d, 'date'))} you felt one of the stop signs.`,
  'niggle-back': (d) =>
    `The same niggle, ${where(d)}, came ${d.times === 2 ? 'twice' : `${text(d, 'times')} times`} in ${text(d, 'days')} days.`,
  // Also of one that did more, once somebody was asked about it.
  'niggle-twice': (d) => `The same niggle, ${where(d)}, came twice in ${text(d, 'days')} days.`,
  'niggle-stopped': (d) => `On ${day(text(d, 'date'))} a niggle, ${where(d)}, made you stop.`,
  'hard-days': () => 'Two hard days came one after the other.',
  paused: (d) => `You have been on a pause since ${day(text(d, 'from'))}.`,
  'niggle-eased': (d) =>
    `The same niggle, ${where(d)}, came twice in ${text(d, 'days')} days, and the days of rest are over.`,
  'niggle-moved': (d) => `On ${day(text(d, 'date'))} a niggle, ${where(d)}, changed how you moved.`,
  'much-harder': (d) =>
    `${text(d, 'times')} of your last ${text(d, 'of')} sessions felt ${text(d, 'points')} points or more harder than meant.`,
  'still-harder': (d) =>
    `You repeated the week, and ${text(d, 'times')} of the last ${text(d, 'of')} sessions still felt ${text(d, 'points')} points or more harder than meant.`,
  'still-cut-short': (d) =>
    `You repeated the week, and ${text(d, 'times')} of the last ${text(d, 'of')} sessions still ended early.`,
  harder: (d) =>
    `${text(d, 'times')} of your last ${text(d, 'of')} sessions felt ${text(d, 'points')} points or more harder than meant.`,
  'cut-short': (d) => `${text(d, 'times')} of your last ${text(d, 'of')} sessions ended early.`,
  away: (d) =>
    d.why === 'gap'
      ? `It has been ${count(d.days, 'day')} without a session, and that happens.`
      : `After ${PAUSE[text(d, 'why')] ?? 'a pause'} it has been ${count(d.days, 'day')} without a session.`,
  'thin-week': (d) =>
    d.done === 0
      ? 'Last week had no session, and that happens.'
      : `Last week had ${count(d.done, 'session')} of ${text(d, 'min')}, and that happens.`,
  through: () => 'All weeks of this programme lie behind you.',
  starting: () => 'Nothing has been done yet, so there is nothing to judge.',
  'one-harder': (d) =>
    `One session felt ${text(d, 'points')} points or more harder than meant: a bad night, heat or hills can do that.`,
  'easier-but': (d) =>
    `${text(d, 'times')} of your last ${text(d, 'of')} sessions felt ${text(d, 'points')} points or more easier than meant.`,
  'as-meant': (d) =>
    `Your last sessions felt about as they were meant; ${count(d.ordinary, 'point')} more or less is ordinary.`,
  'few-rated': () => 'Few sessions say yet how hard they felt.',
  easier: (d) =>
    `${text(d, 'times')} of your last ${text(d, 'of')} sessions felt ${text(d, 'points')} points or more easier than meant, and none harder.`,
};

interface Said {
  readonly detail: Detail;
  readonly move: Advice['move'];
  readonly nameOf: (id: string) => string;
}

const repeated = ({ move }: Said): string =>
  move === undefined
    ? 'Doing the week once more costs nothing.'
    : `Doing week ${move.week} once more costs nothing and makes the next one easier.`;

const eased = ({ move, nameOf }: Said): string => {
  if (move === undefined) return 'Take it gently for a while.';
  return `Week ${move.week} in ${nameOf(move.group)} would be gentler for now; the way back stays open.`;
};

const rested = ({ detail }: Said): string =>
  `Leave running until ${day(text(detail, 'until'))}; an easy walk is fine if walking does not hurt.`;

/** What follows, in a sentence. */
const FOLLOWS: Readonly<Record<FindingCode, (said: Said) => string>> = {
  'warning-sign': () =>
    'No more sessions until a doctor has said yes; if you feel it now, call your local emergency number.',
  'niggle-back': () =>
    'Leave running, ask a doctor or physiotherapist, and tell your leader before you go on.',
  'niggle-twice': rested,
  'niggle-stopped': rested,
  'hard-days': ({ detail }) =>
    `A day of rest is part of getting stronger: the next session is best from ${day(text(detail, 'until'))}.`,
  paused: ({ detail }) =>
    detail.why === 'illness'
      ? 'Rest until you are well, and never go out with a fever; the programme waits.'
      : 'Enjoy it; the programme waits.',
  'niggle-eased': eased,
  'niggle-moved': eased,
  'much-harder': eased,
  'still-harder': eased,
  'still-cut-short': eased,
  harder: repeated,
  'cut-short': repeated,
  away: ({ detail }) =>
    `Week ${text(detail, 'week')}, ${count(detail.back, 'week')} back, is a gentle way in.`,
  'thin-week': repeated,
  through: () => 'Any session can be done again, and your leader may know what comes next.',
  starting: () => 'Begin with the first session, slower than feels right.',
  'one-harder': () => 'Go on as planned, and let the breath decide.',
  'easier-but': ({ detail }) => AGAINST[text(detail, 'against')]?.(detail) ?? 'Go on as planned.',
  'as-meant': () => 'Go on as planned.',
  'few-rated': () => 'Go on as planned, and go by your breath.',
  easier: ({ move, nameOf }) =>
    move === undefined
      ? 'The next group would be worth a try.'
      : `${nameOf(move.group)}, from its week ${move.week}, would be worth a try.`,
};

const MINDS: Readonly<Record<Mind, (detail: Detail) => string>> = {
  doctor: () => 'A doctor’s yes would change this, and nothing else.',
  'looked-at': () => 'This changes when somebody licensed has looked at it and agreed.',
  'days-without': (d) => `${text(d, 'days')} days without it would change this.`,
  rested: (d) => `This changes on ${day(text(d, 'until'))}, if it does not come back.`,
  'pause-ends': () => 'This changes when you end the pause.',
  'as-meant': (d) =>
    `${text(d, 'times')} of the next ${text(d, 'of')} sessions less than ${text(d, 'points')} points above their target would change this.`,
  'to-the-end': (d) =>
    `${text(d, 'times')} of the next ${text(d, 'of')} sessions gone through to the end would change this.`,
  'week-done': (d) => `A week with ${count(d.min, 'session')} would change this.`,
  'harder-twice': (d) =>
    `${text(d, 'times')} of ${text(d, 'of')} sessions that feel ${text(d, 'points')} points or more harder than meant would change this; one alone does not.`,
  'easier-often': (d) =>
    `So would ${text(d, 'times')} of ${text(d, 'of')} that feel ${text(d, 'points')} points or more easier, with none harder.`,
  'rate-more': () => 'Saying how hard a session felt, a few times, would tell more.',
  'again-one': () => 'If the first session back feels easy, take the week that you like.',
  'too-hard-there': (d) =>
    `If ${text(d, 'times')} of the first ${text(d, 'of')} sessions there feel ${text(d, 'points')} points or more harder than meant, come back.`,
};

const TITLES: Readonly<Record<Action, string>> = {
  'step-up': 'You could step up',
  'go-on': 'Go on',
  repeat: 'Repeat the week',
  ease: 'Ease off for now',
  rest: 'Rest',
  stop: 'Stop and ask',
};

/** Coming back in is more than repeating, and beginning is not going on. */
const OWN_TITLES: Partial<Readonly<Record<FindingCode, string>>> = {
  away: 'Welcome back',
  starting: 'To begin with',
};

const titleOf = ({ action, because }: Advice): string => OWN_TITLES[because.code] ?? TITLES[action];

/** Advice as it is said: why in two sentences, then what would change it. */
export interface AdviceSaid {
  readonly title: string;
  readonly why: readonly [seen: string, follows: string];
  readonly changes: readonly string[];
}

/** @param groups the programme's, for their names */
export function adviceSaid(advice: Advice, groups: readonly Group[]): AdviceSaid {
  const { because, move, changes } = advice;
  const nameOf = (id: string): string => groups.find((group) => group.id === id)?.name ?? id;
  return {
    title: titleOf(advice),
    why: [
      SEEN[because.code](because.detail),
      FOLLOWS[because.code]({ detail: because.detail, move, nameOf }),
    ],
    changes: changes.map(({ code, detail }) => MINDS[code](detail)),
  };
}

/** What was seen, alone: for what else stands in the log, and for care before a session. */
export const findingSeen = ({ code, detail }: Finding): string => SEEN[code](detail);

export const advice = {
  title: 'What next',
  decide: 'You decide.',
  also: 'Also seen',
  changes: 'What would change this',
  yes: {
    'step-up': 'Step up',
    'go-on': 'Go on',
    repeat: 'Repeat the week',
    ease: 'Ease off',
    rest: 'I will rest',
    stop: 'I will ask',
  } satisfies Readonly<Record<Action, string>>,
  takeBack: 'Take this back',
  comeBack: (week: number): string => `Come back in week ${week}`,
  asked: 'I have asked, and may go on',
  askedHelp: 'Only after a doctor, or for a niggle a physiotherapist, has said yes.',
  askedTomorrow: 'Once a doctor has said yes, you can say so here, from tomorrow on.',
  decided: (on: string, week: number, group: string): string =>
    `Decided: week ${week} in ${group} from ${day(on)}.`,
  notAdvice:
    'This comes from a few plain rules and what you wrote down. A doctor, a physiotherapist or your leader knows more.',
} as const;
