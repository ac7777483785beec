/** Why somebody needs a word, and a draft of it: plain, warm, no diagnosis. */
import type { DueCode, DueReason } from '../domain/board/due.ts';
import type { NigglePlace } from '../domain/log/entry.ts';
import type { Detail } from '../domain/programme/problem.ts';
import type { Group } from '../domain/programme/programme.ts';
import { day } from './times.ts';
import { capital, PLACE } from './words.ts';

export const dueWords = {
  title: 'Who needs a word',
  none: 'Nobody stands out. A word to somebody is never wrong.',
  alone: (name: string): string =>
    `For ${name} alone: it has what they told you in confidence. Send it to nobody else.`,
  guidance:
    'These are prompts for a conversation, not findings. What a doctor, physiotherapist or qualified coach says comes first.',
} as const;

const text = (detail: Detail, key: string): string => String(detail[key] ?? '');
const number = (detail: Detail, key: string): number => Number(detail[key] ?? 0);
const date = (detail: Detail): string => day(text(detail, 'date'));
const times = (n: number): string => (n === 2 ? 'twice' : `${n} times`);

const COUNT = ['none', 'one', 'two', 'three'];
const word = (n: number): string => COUNT[n] ?? String(n);

/** "left knee", "calf on both sides"; a place that has no name is "one spot". */
function where(detail: Detail): string {
  const place = text(detail, 'place') as NigglePlace;
  if (place === 'other' || !(place in PLACE)) return 'in one spot';
  const name = PLACE[place].toLowerCase();
  const { side } = detail;
  return side === 'both'
    ? `${name}, both sides`
    : side === undefined
      ? name
      : `${String(side)} ${name}`;
}

/** "two of your last three sessions", "both of the last two", "all of the last three". */
function share(d: Detail, whose: 'your' | 'the'): string {
  const [n, of] = [number(d, 'times'), number(d, 'of')];
  const some = n < of ? word(n) : n === 2 ? 'both' : 'all';
  return of === 1 ? `${whose} last session` : `${some} of ${whose} last ${word(of)} sessions`;
}

const ofLast = (d: Detail): string => capital(share(d, 'the'));

const since = (n: number): string =>
  n === 0 ? '' : ` They have been out ${n === 1 ? 'once' : times(n)} since.`;

type Names = (id: string) => string;

const REASON: Readonly<Record<DueCode, (d: Detail, nameOf: Names) => string>> = {
  sign: (d) => {
    const n = number(d, 'times');
    const said =
      n > 1
        ? `Told of a warning sign ${times(n)}, last on ${date(d)}.`
        : `Told of a warning sign on ${date(d)}.`;
    return `${said}${since(number(d, 'since'))}`;
  },
  'niggle-again': (d) =>
    `The same niggle, ${where(d)}, came ${times(number(d, 'times'))} in ${text(d, 'days')} days.`,
  niggle: (d) =>
    number(d, 'severity') === 3
      ? `A niggle, ${where(d)}, made them stop on ${date(d)}.`
      : `A niggle, ${where(d)}, changed how they moved on ${date(d)}.`,
  harder: (d) => `${ofLast(d)} felt ${text(d, 'points')} points or more harder than meant.`,
  'cut-short': (d) => `${ofLast(d)} ended early.`,
  silent: (d) => `Nothing was heard for ${text(d, 'days')} days.`,
  easy: (d) =>
    d.against === 'hardest'
      ? `${ofLast(d)} felt ${text(d, 'points')} points or more easier than meant, and no group asks for more.`
      : `${ofLast(d)} felt ${text(d, 'points')} points or more easier than meant; the next group’s runs are too long as yet.`,
  ready: (d, nameOf) =>
    `${ofLast(d)} felt ${text(d, 'points')} points or more easier than meant, none harder. ${nameOf(text(d, 'group'))} from its week ${text(d, 'week')} is within reach.`,
};

/** The reason in a sentence or two, for the leader. */
export const reasonSentence = ({ code, detail }: DueReason, groups: readonly Group[]): string =>
  REASON[code](detail, (id) => groups.find((group) => group.id === id)?.name ?? id);

/** What a reason is called in a list. */
export const DUE_TITLE: Readonly<Record<DueCode, string>> = {
  sign: 'Warning sign',
  'niggle-again': 'The same niggle again',
  niggle: 'Niggle',
  harder: 'Harder than meant',
  'cut-short': 'Cut short',
  silent: 'Not heard for a while',
  easy: 'Far too easy',
  ready: 'Ready for the next group',
};

// ---- the word itself -------------------------------------------------------------------------

const yours = (d: Detail): string => share(d, 'your');

const WORD: Readonly<Record<DueCode, (d: Detail, nameOf: Names) => readonly string[]>> = {
  sign: (d) => [
    `You told me that you felt one of the stop signs on ${date(d)}. Thank you for saying so.`,
    'Please do no more sessions until you have asked a doctor and have their yes. It may be nothing; I cannot know, and nor can an app.',
    'If you feel it now, or it comes back: stop, sit or lie down where others can see you, and call your local emergency number. (112 works from mobile phones in many countries.)',
    'Your place in the group stays. How are you?',
  ],
  'niggle-again': (d) => [
    `You told me of the same niggle, ${where(d)}, ${times(number(d, 'times'))} in ${text(d, 'days')} days.`,
    'Please leave running for now, and let a doctor or physiotherapist look at it before you go on. An easy walk is fine if walking does not hurt.',
    'Nothing is lost: the plan will wait. Tell me what they say, if you like.',
  ],
  niggle: (d) => [
    number(d, 'severity') === 3
      ? `You told me that a niggle, ${where(d)}, made you stop on ${date(d)}. Stopping was right.`
      : `You told me that a niggle, ${where(d)}, changed how you moved on ${date(d)}.`,
    'Please leave running until it is gone; an easy walk is fine if walking does not hurt. If it is back the next time, swells or wakes you at night, it belongs to a doctor or physiotherapist.',
    'How is it now?',
  ],
  harder: (d) => [
    `I saw that ${yours(d)} felt clearly harder than they were meant to. That happens, and it is good to know.`,
    number(d, 'points') >= 3
      ? 'A gentler group for a while, or shorter runs and longer walks, would be right. Easing off is always allowed.'
      : 'Do the week once more before you go on; that costs nothing. Walk when it says run, whenever you need to.',
    'Was it the session, the weather, or life?',
  ],
  'cut-short': (d) => [
    `I saw that ${yours(d)} ended early. There is no harm in that.`,
    'Was it the time, the weather, or the session? If it was the session, do the week once more, and we make it fit.',
  ],
  silent: (d) => [
    `I have not heard from you for ${text(d, 'days')} days. That is fine, nobody has to tell.`,
    'If something hurts, or life is full, let me know, and we find a gentle way back in. Missed days need not be made up for.',
  ],
  easy: (d) => [
    `I saw that ${yours(d)} felt clearly easier than they were meant to. That is a good sign.`,
    d.against === 'hardest'
      ? 'Ours is the most demanding group I have, so enjoy it, and tell me what you would like next.'
      : 'The runs of the next group are still long for you, so stay a little and enjoy it. We look again soon.',
  ],
  ready: (d, nameOf) => [
    `I saw that ${yours(d)} felt clearly easier than they were meant to, and none harder.`,
    `${nameOf(text(d, 'group'))}, from its week ${text(d, 'week')}, would be worth a try. You decide; the way back stays open.`,
  ],
};

/** The first of a person's names; nothing where they have none. */
export const firstName = (name = ''): string => name.trim().split(/\s+/)[0] ?? '';

export interface WordTo {
  readonly name?: string;
  readonly leader: string;
  readonly groups: readonly Group[];
}

/** A draft of a message to one person about one reason, to be copied or shared with them alone. */
export function wordDraft({ code, detail }: DueReason, { name, leader, groups }: WordTo): string {
  const nameOf: Names = (id) => groups.find((group) => group.id === id)?.name ?? id;
  const first = firstName(name);
  return [
    first === '' ? 'Hello,' : `Hello ${first},`,
    WORD[code](detail, nameOf).join('\n'),
    leader.trim(),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}
