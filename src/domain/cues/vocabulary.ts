import { ACTIVITIES, type Activity } from '../programme/plan.ts';
import { REMINDERS } from './reminders.ts';

/**
 * Everything that the voice can say, as clips to be joined at natural breaks.
 * The pack's builder speaks every clip listed here, and a test walks the whole of it.
 */

/** Name of a clip in the voice pack, such as `activity.brisk-walk`, `number.7` or `tone.short`. */
export type ClipId = string;

/** A sine that glides from one frequency to another. */
export interface Tone {
  readonly seconds: number;
  readonly fromHz: number;
  readonly toHz: number;
}

/** A note and then some pips of another pitch: what a group that is not spoken to is known by. */
export interface Call {
  /** From the start of the note to the end of the last pip. */
  readonly seconds: number;
  readonly note: Tone;
  readonly pip: Tone;
  readonly pips: number;
  /** Quiet before each pip. */
  readonly restSeconds: number;
}

/**
 * Which neighbours a clip belongs with: a clip that joins nothing is a phrase of its own, with
 * a pause and a full stop around it. A number joins nothing by itself, its neighbours do.
 * Numbers and units are apart because "forty minutes" said in one breath is heard as fourteen.
 */
export type Join = 'none' | 'left' | 'right' | 'both';

/** One clip of the voice pack: what it says, and how it follows another. */
export interface ClipSpec {
  /** What the speech engine is given, or the tone to make. */
  readonly say: string | Tone | Call;
  /** The caption, without capital and full stop; empty for a tone. */
  readonly text: string;
  readonly join: Join;
  /** How far below everything else it is kept, in LU; left out: not at all. */
  readonly softer?: number;
}

// biome-ignore format: a table
const UNITS = [
  'zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven',
  'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen',
] as const;
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty'] as const;

/** A whole number from 0 to 59 in words. */
export function inWords(n: number): string {
  if (n < 20) return UNITS[n] ?? String(n);
  const unit = n % 10;
  return `${TENS[Math.floor(n / 10)]}${unit === 0 ? '' : `-${UNITS[unit]}`}`;
}

/** The highest number that is said: seconds and minutes end at 59, sets at 50. */
export const LAST_NUMBER = 59;

/** Clip of an activity, part, reminder or phrase: spaces become hyphens. */
export const clipOf = (kind: string, name: string | number): ClipId =>
  `${kind}.${String(name).replaceAll(' ', '-')}`;

const plain = (text: string): ClipSpec => {
  const bare = text.replace(/\.$/, '');
  return { say: text, text: bare, join: 'none' };
};
const joined = (text: string, join: Join): ClipSpec => ({ say: text, text, join });
const tone = (seconds: number, fromHz: number, toHz: number): ClipSpec => ({
  say: { seconds, fromHz, toHz },
  text: '',
  join: 'none',
});

/** Groups of a session that is led together are numbered from 1 to this. */
export const LAST_GROUP = 8;

const LOW_HZ = 600;
const HIGH_HZ = 1000;

/**
 * The call of a group: a high note and one to four low pips for the first four, a low note and
 * high pips for the others. Unlike a countdown, it is never one pip alone.
 */
function call(group: number): ClipSpec {
  const isFirst = group <= LAST_GROUP / 2;
  const [noteHz, pipHz] = isFirst ? [HIGH_HZ, LOW_HZ] : [LOW_HZ, HIGH_HZ];
  const note = { seconds: 0.16, fromHz: noteHz, toHz: noteHz };
  const pip = { seconds: 0.07, fromHz: pipHz, toHz: pipHz };
  const pips = isFirst ? group : group - LAST_GROUP / 2;
  const restSeconds = 0.06;
  const seconds = note.seconds + pips * (restSeconds + pip.seconds);
  return { say: { seconds, note, pip, pips, restSeconds }, text: '', join: 'none' };
}

/** Well below speech, so that nobody turns to it (common practice, no source). */
const TICK_SOFTER_LU = 20;

const TONES: Record<ClipId, ClipSpec> = {
  'tone.wake': tone(0.6, 600, 600),
  'tone.short': tone(0.12, 800, 800),
  'tone.rise': tone(0.6, 600, 1150),
  'tone.fall': tone(0.6, 1150, 600),
  'tone.level': tone(0.6, 800, 800),
  'tone.tick': { ...tone(0.06, 700, 700), softer: TICK_SOFTER_LU },
};

const PHRASES: Record<ClipId, ClipSpec> = {
  'part.warm-up': { say: 'Warm up.', text: 'warm-up', join: 'none' },
  'part.main': plain('main set'),
  'part.cool-down': { say: 'Cool down.', text: 'cool-down', join: 'none' },
  'word.set': joined('set', 'right'),
  'word.round': joined('round', 'right'),
  'word.group': joined('group', 'right'),
  'word.groups': joined('groups', 'right'),
  'word.of': joined('of', 'both'),
  'word.and': joined('and', 'both'),
  'word.minute': joined('minute', 'left'),
  'word.minutes': joined('minutes', 'left'),
  'word.second': joined('second', 'left'),
  'word.seconds': joined('seconds', 'left'),
  'word.to-go': joined('to go', 'left'),
  'hours.1': plain('an hour'),
  'hours.2': plain('two hours'),
  'hours-and.1': joined('an hour and', 'right'),
  'hours-and.2': joined('two hours and', 'right'),
  'phrase.carry-on': plain('carry on'),
  'phrase.new-sets': plain('new sets'),
  'phrase.last-set': plain('last set'),
  'phrase.last-round': plain('last round'),
  'phrase.halfway': plain('halfway'),
  'phrase.start': plain('Here we go.'),
  'phrase.finish': plain('That is the end. You are done for today.'),
  'phrase.holding': plain('Holding. Go on when you are ready.'),
  'phrase.still-holding': plain('Still holding.'),
  'phrase.going-on': plain('Going on.'),
  'phrase.one-more': plain('One minute more.'),
  'phrase.walk-now': plain('Walk now.'),
  'phrase.check-start': plain('This is a sound check. Lock the phone and put it in your pocket.'),
  'phrase.check-still': plain('Sound check. All is well.'),
  'phrase.check-end': plain('The sound check is over. Take the phone out.'),
  'phrase.all-groups': plain('all groups'),
  'phrase.get-ready': plain('get ready'),
  // Not "done": that is heard as "run" in noise.
  'phrase.finished': plain('finished'),
  'phrase.waiting': plain('Waiting for the start.'),
  'phrase.sample': plain('This is how it will sound.'),
};

/** Said otherwise than written, because "stretch" is heard as "stand" in noise. */
const SAID_ALONE: Partial<Record<Activity, ClipSpec>> = {
  stand: plain('stand still'),
  stretch: plain('stretching'),
};

const EFFORTS: Record<ClipId, ClipSpec> = {
  'effort.rest': plain('Rest.'),
  'effort.sing': plain('So easy that you could sing.'),
  'effort.chat': plain('You can chat freely.'),
  'effort.sentences': plain('You can talk in whole sentences.'),
  'effort.few-words': plain('A few words at a time.'),
  'effort.one-word': plain('A single word at a time.'),
  'effort.all': plain('All that you have.'),
};

function listClips(): Record<ClipId, ClipSpec> {
  const clips: Record<ClipId, ClipSpec> = { ...TONES, ...PHRASES, ...EFFORTS };
  for (const activity of ACTIVITIES)
    clips[clipOf('activity', activity)] = SAID_ALONE[activity] ?? plain(activity);
  for (let n = 1; n <= LAST_GROUP; n += 1) clips[clipOf('tone', `group-${n}`)] = call(n);
  for (let n = 1; n <= LAST_NUMBER; n += 1) clips[clipOf('number', n)] = plain(inWords(n));
  for (const [id, text] of Object.entries(REMINDERS)) clips[clipOf('reminder', id)] = plain(text);
  return clips;
}

/** Every clip of the voice pack by its id. */
export const CLIPS: Readonly<Record<ClipId, ClipSpec>> = listClips();
