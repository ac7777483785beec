import { COUNTDOWN, countdownTo, toneInto, wordsStartAt } from '../cues/boundary.ts';
import type { ClipLengths, Cue, CueKind, PlacedClip, Talk } from '../cues/cue.ts';
import { callOf, SAY, TONE } from '../cues/phrases.ts';
import { cueOf } from '../cues/speak.ts';
import type { ClipId } from '../cues/vocabulary.ts';
import { type Ms, ms } from '../units.ts';
import { changeForms } from './clauses.ts';
import type { LeadPlan } from './lead-plan.ts';
import { leadTimeline } from './lead-timeline.ts';
import { endOfAll, type LeadChange, type Moment, momentsOf } from './moments.ts';
import { lengthOfSentence, placeSentence, type Sentence } from './sentence.ts';

/** The words of the start: Bluetooth swallows the first second of sound. */
const START_WORDS = 1500;

/** Least quiet between the end of one change and the first tone of the next. */
export const APART = ms(200);

/** Words leave this much before a change that is counted in, so that one short tone is heard. */
const COUNT_ROOM = ms(1200);

/** Quiet after the call of a group. */
const CALL_PAUSE = ms(300);

/** What decides the sounds: who does what when, how much is said, and how long each clip is. */
export interface SayWith {
  readonly plan: LeadPlan;
  readonly talk: Talk;
  readonly lengths: ClipLengths;
}

/**
 * The sounds of every change, in order, none overlapping.
 *
 * A change is heard at its time, unless what was said before is not over by then: it is then
 * heard as soon as that is over, together with all that has changed meanwhile. Of a group that
 * has changed twice by then only the later is said: the earlier is no longer so.
 */
export function changeCues(options: SayWith): Cue[] {
  const moments = momentsToHear(options.plan);
  const indexOf = segmentIndexes(options.plan);
  const cues: Cue[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (let from = 0, to = 0; from < moments.length; from = to) {
    const planned = (moments[from] as Moment).at;
    const at = ms(Math.max(planned, free + APART));
    to = from + moments.slice(from).filter((moment) => moment.at <= at).length;
    const due = moments.slice(from, to);
    const heard = { at, free, due, next: moments[to], isMoved: at > planned };
    cues.push(...cuesOf(heard, indexOf((due.at(-1) as Moment).at), options));
    free = cues.at(-1)?.end ?? free;
  }
  return cues;
}

/** Changes of the groups that are to be heard, and the start in any case. */
function momentsToHear(plan: LeadPlan): Moment[] {
  const isHeard = ({ group }: LeadChange): boolean => group.voice !== 'silent';
  const moments = momentsOf(plan)
    .map(({ at, changes }) => ({ at, changes: changes.filter(isHeard) }))
    .filter(({ changes }) => changes.length > 0);
  const isLater = moments[0] !== undefined && moments[0].at > 0;
  return isLater ? [{ at: ms(0), changes: [] }, ...moments] : moments;
}

function segmentIndexes(plan: LeadPlan): (at: Ms) => number {
  const { segments } = leadTimeline(plan);
  const byStart = new Map(segments.map(({ start, index }) => [start, index]));
  return (at) => byStart.get(at) ?? segments.length - 1;
}

/** What is heard in one go. */
interface Together {
  readonly at: Ms;
  /** The end of what was heard before. */
  readonly free: number;
  readonly due: readonly Moment[];
  readonly next: Moment | undefined;
  readonly isMoved: boolean;
}

function cuesOf(heard: Together, segment: number, options: SayWith): Cue[] {
  const { plan, lengths } = options;
  const { at, due, isMoved } = heard;
  const changes = latest(due);
  const spoken = changes.filter(({ group }) => group.voice === 'words');
  const called = changes.filter(({ group }) => group.voice === 'tone');
  const isStart = at === 0;
  const isEnd = due.at(-1)?.at === endOfAll(plan) && spoken.length > 0;
  const tone = isStart ? TONE.wake : toneOf(spoken);
  const first = isStart ? START_WORDS : undefined;
  const calls = placeCalls(called, tone ? wordsStartAt(at, tone, lengths, first) : at, lengths);
  const sentence =
    isStart || spoken.length > 0 ? fullest(heard, spoken, calls.free, options) : NONE;
  const rest = [...calls.clips, ...placeSentence(sentence, calls.free, lengths)];
  const text = [...called.map(({ group }) => `Tone of group ${group.number}.`), sentence.text]
    .filter((part) => part !== '')
    .join(' ');
  const kind: CueKind = isStart ? 'start' : isEnd ? 'finish' : 'change';
  const about = { kind, segment };
  if (tone === undefined) return [cueOf(about, rest, text, lengths)];
  const counted =
    isStart || isMoved ? [] : COUNTDOWN.filter((s) => at - s * 1000 >= heard.free + APART);
  if (counted.length === 0)
    return [cueOf(about, [{ at, clip: tone }, ...rest], text || WAKE_TEXT, lengths)];
  return [
    countdownTo(at, { segment, counted, long: tone }, lengths),
    cueOf(about, rest, text, lengths),
  ];
}

const NONE: Sentence = { words: [], text: '' };
const WAKE_TEXT = 'A tone.';

/** The last change of each group, in the order of the groups. */
function latest(due: readonly Moment[]): LeadChange[] {
  const last = new Map(due.flatMap(({ changes }) => changes.map((c) => [c.group.number, c])));
  return [...last.values()].sort((a, b) => a.group.number - b.group.number);
}

/** The long tone rises or falls where it does so for all, and stays level otherwise. */
function toneOf(changes: readonly LeadChange[]): ClipId | undefined {
  const tones = changes.map(({ before, after }) =>
    before === undefined ? TONE.harder : toneInto(before, after),
  );
  return tones.every((tone) => tone === tones[0]) ? tones[0] : TONE.same;
}

/** The calls of groups that are not spoken to, one after another, and when words may follow. */
function placeCalls(
  called: readonly LeadChange[],
  from: Ms,
  lengths: ClipLengths,
): { readonly clips: readonly PlacedClip[]; readonly free: Ms } {
  let free = from;
  const clips = called.map(({ group }) => {
    const placed = { at: free, clip: callOf(group.number) };
    free = ms(free + lengths.lengthOf(placed.clip) + CALL_PAUSE);
    return placed;
  });
  return { clips, free };
}

/** The fullest form that leaves room for the next change, or the barest. */
function fullest(
  { at, due, next, isMoved }: Together,
  spoken: readonly LeadChange[],
  from: Ms,
  { plan, talk, lengths }: SayWith,
): Sentence {
  const saysStart = at === 0 && plan.groups.some(({ voice }) => voice === 'words');
  const around = {
    first: saysStart ? SAY.start : undefined,
    last: due.at(-1)?.at === endOfAll(plan) ? SAY.finish : undefined,
  };
  const isCounted = next?.changes.some(({ group }) => group.voice === 'words') ?? false;
  const by = next === undefined ? Infinity : next.at - (isCounted ? COUNT_ROOM : APART);
  let barest = NONE;
  for (const form of changeForms(spoken, plan, around, talk !== 'few' && !isMoved)) {
    if (from + lengthOfSentence(form, lengths) <= by) return form;
    barest = form;
  }
  return barest;
}
