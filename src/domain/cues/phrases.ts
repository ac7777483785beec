import type { Activity, Part } from '../programme/plan.ts';
import type { Turn } from '../timeline/timeline.ts';
import type { Ms, Percent } from '../units.ts';
import { ms } from '../units.ts';
import type { ReminderId } from './reminders.ts';
import type { ClipId } from './vocabulary.ts';
import { CLIPS, clipOf } from './vocabulary.ts';

/** Clips in the order in which they are said. */
export type Phrase = readonly ClipId[];

/** "Brisk walk". */
export const sayActivity = (activity: Activity): Phrase => [clipOf('activity', activity)];

/** "Main set". */
export const sayPart = (part: Part): Phrase => [clipOf('part', part)];

const turn = (word: ClipId, { n, of }: Turn): Phrase => [
  word,
  clipOf('number', n),
  'word.of',
  clipOf('number', of),
];

/** "Set 3 of 7"; numbers from 1 to 50. */
export const saySet = (set: Turn): Phrase => turn('word.set', set);

/** "Round 1 of 2"; numbers from 1 to 50. */
export const sayRound = (round: Turn): Phrase => turn('word.round', round);

/** "Set 3", for when the count does not fit. */
export const saySetOnly = (set: Turn): Phrase => ['word.set', clipOf('number', set.n)];

/** "Round 1", for when the count does not fit. */
export const sayRoundOnly = (round: Turn): Phrase => ['word.round', clipOf('number', round.n)];

/** "Group 1", from 1 to 8: names are shown, numbers are spoken. */
export const sayGroup = (number: number): Phrase => ['word.group', clipOf('number', number)];

/** "Groups 2, 3 and 5"; "Group 2" for one. At least one number, from 1 to 8. */
export function sayGroups(numbers: readonly number[]): Phrase {
  const said = numbers.map((number) => clipOf('number', number));
  if (said.length === 1) return ['word.group', ...said];
  return ['word.groups', ...said.slice(0, -1), 'word.and', ...said.slice(-1)];
}

/** A reminder of the catalogue. */
export const sayReminder = (id: ReminderId): Phrase => [clipOf('reminder', id)];

/** A length of time as it is spoken: whole seconds, and over two minutes whole five seconds. */
export function spokenDuration(duration: Ms): Ms {
  const step = duration > 120_000 ? 5000 : 1000;
  return ms(Math.round(duration / step) * step);
}

const sayCount = (n: number, unit: 'minute' | 'second'): Phrase => [
  clipOf('number', n),
  clipOf('word', n === 1 ? unit : `${unit}s`),
];

/** "One minute thirty"; seconds that a clock face does not mark are said in full. */
const sayMinutesAndSeconds = (minutes: number, seconds: number): Phrase => {
  if (minutes === 0) return sayCount(seconds, 'second');
  if (seconds === 0) return sayCount(minutes, 'minute');
  if (seconds % 5 === 0 && seconds >= 10)
    return [...sayCount(minutes, 'minute'), clipOf('number', seconds)];
  return [...sayCount(minutes, 'minute'), 'word.and', ...sayCount(seconds, 'second')];
};

/**
 * "Forty seconds", "one minute thirty", "an hour and five minutes": any length from 1 s to
 * 2 h 59, as rounded by {@link spokenDuration}.
 */
export function sayDuration(duration: Ms): Phrase {
  const total = spokenDuration(duration) / 1000;
  const hours = Math.floor(total / 3600);
  const rest = total - hours * 3600;
  if (rest === 0) return [clipOf('hours', hours)];
  const below = sayMinutesAndSeconds(Math.floor(rest / 60), rest % 60);
  return hours === 0 ? below : [clipOf('hours-and', hours), ...below];
}

/** "Five minutes to go". */
export const sayTimeLeft = (left: Ms): Phrase => [...sayDuration(left), 'word.to-go'];

// biome-ignore format: a table
const EFFORT_BY_TENTH = [
  'rest', 'sing', 'sing', 'chat', 'chat', 'sentences', 'sentences', 'few-words', 'few-words',
  'one-word', 'all',
] as const;

/** How hard it should feel, in our own words, from a percentage (its tenth is the rating). */
export function sayEffort(percent: Percent): Phrase {
  const tenth = Math.min(10, Math.max(0, Math.round(percent / 10)));
  return [clipOf('effort', EFFORT_BY_TENTH[tenth] ?? 'rest')];
}

/** Phrases that stand by themselves. */
export const SAY = {
  carryOn: ['phrase.carry-on'],
  newSets: ['phrase.new-sets'],
  lastSet: ['phrase.last-set'],
  lastRound: ['phrase.last-round'],
  tenSeconds: ['number.10', 'word.seconds'],
  oneMinute: ['number.1', 'word.minute'],
  halfway: ['phrase.halfway'],
  start: ['phrase.start'],
  finish: ['phrase.finish'],
  holding: ['phrase.holding'],
  stillHolding: ['phrase.still-holding'],
  goingOn: ['phrase.going-on'],
  oneMore: ['phrase.one-more'],
  walkNow: ['phrase.walk-now'],
  /** For the five minutes that a plan without a cool-down is offered. */
  coolDown: ['part.cool-down', 'activity.easy-walk', 'number.5', 'word.minutes'],
  checkStart: ['phrase.check-start'],
  checkStill: ['phrase.check-still'],
  checkEnd: ['phrase.check-end'],
  allGroups: ['phrase.all-groups'],
  getReady: ['phrase.get-ready'],
  /** A group that is over while others go on. */
  finished: ['phrase.finished'],
  /** Until a start that was agreed ahead. */
  waiting: ['phrase.waiting'],
  /** After a rising tone: what "play a cue now" plays. */
  sample: ['phrase.sample', 'activity.run', 'number.1', 'word.minute'],
} as const satisfies Record<string, Phrase>;

/** The tones, by what they are for. */
export const TONE = {
  wake: 'tone.wake',
  short: 'tone.short',
  harder: 'tone.rise',
  easier: 'tone.fall',
  same: 'tone.level',
  tick: 'tone.tick',
} as const satisfies Record<string, ClipId>;

/** What a group that is not spoken to is known by, from 1 to 8. */
export const callOf = (group: number): ClipId => clipOf('tone', `group-${group}`);

/** Between two clips of one phrase: the shortest at which their frames never meet. */
export const JOIN_PAUSE_MS = ms(100);

/** Between two phrases: a breath, so that each is heard by itself. */
export const PHRASE_PAUSE_MS = ms(288);

const isNumber = (clip: ClipId): boolean => clip.startsWith('number.');

/** "Thirty" after "one minute" belongs to it. */
const isRemainder = (left: ClipId, right: ClipId): boolean =>
  /^word\.minutes?$/.test(left) && isNumber(right);

/** "Groups one, two and three": nothing else puts a number after a number. */
const isListed = (left: ClipId, right: ClipId): boolean => isNumber(left) && isNumber(right);

const joins = (left: ClipId, right: ClipId): boolean => {
  const after = CLIPS[left]?.join;
  const before = CLIPS[right]?.join;
  const tied = after === 'right' || after === 'both' || before === 'left' || before === 'both';
  return tied || isRemainder(left, right) || isListed(left, right);
};

/** Quiet between the last sound of one clip and the first sound of the next. */
export const pauseBetween = (left: ClipId, right: ClipId): Ms =>
  joins(left, right) ? JOIN_PAUSE_MS : PHRASE_PAUSE_MS;

const COUNTED = /^word\.(set|round|group|of)$/;

/** Whether a number is one of groups that are listed: "Groups 1, 2 and 3". */
function isOfGroups(clips: Phrase, i: number): boolean {
  let from = i - 1;
  while (isNumber(clips[from] ?? '') || clips[from] === 'word.and') from--;
  return clips[from] === 'word.groups';
}

function textOf(clips: Phrase, i: number): string {
  const clip = clips[i] ?? '';
  const counted = isNumber(clip) && (COUNTED.test(clips[i - 1] ?? '') || isOfGroups(clips, i));
  return counted ? clip.slice('number.'.length) : (CLIPS[clip]?.text ?? '');
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** The words of some clips as a caption: "Set 3 of 7. Run. One minute thirty." Tones give nothing. */
export function captionOf(clips: Phrase): string {
  const sentences: string[] = [];
  clips.forEach((clip, i) => {
    const before = clips[i - 1];
    const text = textOf(clips, i);
    if (text === '') return;
    if (before !== undefined && joins(before, clip)) {
      const comma = isListed(before, clip) ? ',' : '';
      sentences.push(`${sentences.pop() ?? ''}${comma} ${text}`);
    } else sentences.push(text);
  });
  return sentences.map(sentence).join(' ');
}
