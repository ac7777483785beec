import type { Segment, Timeline } from '../timeline/timeline.ts';
import { type Ms, ms, type Percent } from '../units.ts';
import { countdowns, toneInto, wordsEndBy, wordsStartAt } from './boundary.ts';
import { type ChangeWords, changeWords, wordings } from './change-words.ts';
import type { ClipLengths, Cue, CuePlan, Talk } from './cue.ts';
import { fillGaps } from './fillers.ts';
import { placeHalfways } from './halfway.ts';
import { captionOf, type Phrase, SAY, sayActivity, TONE } from './phrases.ts';
import { openingEndsBy, placeRemaining } from './remaining.ts';
import { APART, putAt, type Room } from './room.ts';
import { isShort } from './short.ts';
import { cueOf, heardFor, placeClips, spokenCue } from './speak.ts';
import type { ClipId } from './vocabulary.ts';

/** What the cues of a session depend on besides its timeline. */
export interface CueOptions {
  readonly talk: Talk;
  /** Ids of the spoken catalogue or the leader's own words, in the leader's order. */
  readonly reminders: readonly string[];
  /** How hard the whole session is meant to feel. */
  readonly target: Percent;
  readonly lengths: ClipLengths;
  /** The tone at 0 s; the waking tone when left out. */
  readonly opening?: ClipId;
}

/** The words of the start: Bluetooth swallows the first second of sound. */
const START_WORDS = 1500;
/** The activity once more, for who was still putting the phone away. */
const ONCE_MORE = ms(12_000);

/**
 * Everything that is heard in a session, and when: tones and words, in order, none overlapping.
 * The last cue, after the end, says that the session is done. Same input, same plan.
 *
 * @param timeline at least one segment
 * @throws when `lengths` does not know a clip: a pack is checked before it is used
 */
export function planCues(timeline: Timeline, options: CueOptions): CuePlan {
  const { talk, lengths } = options;
  const { segments, total } = timeline;
  const compose = composer(timeline, options);
  const rooms = segments.map((segment): Room => ({ segment, cues: [compose(segment.index, [])] }));
  if (talk !== 'few') for (const room of rooms) placeRemaining(room, lengths);
  placeOnceMore(rooms[0], lengths);
  if (talk !== 'few') placeHalfways(timeline, rooms, compose, lengths);
  fillGaps(timeline, rooms, options);
  const cues = [...rooms.flatMap((room) => room.cues), ...countdowns(timeline, lengths)];
  const finish = finishCue(timeline, lengths);
  return { cues: [...cues.sort((a, b) => a.at - b.at), finish], total };
}

/** Makes the words of a segment's start, as full as fits before what comes next. */
function composer(
  { segments }: Timeline,
  { talk, target, lengths, opening = TONE.wake }: CueOptions,
): (index: number, halfway: Phrase) => Cue {
  const words = changeWords(segments, talk, target);
  return (index, halfway) => {
    const segment = segments[index] as Segment;
    const before = segments[index - 1];
    const at = before
      ? wordsStartAt(segment.start, toneInto(before, segment), lengths)
      : wordsStartAt(segment.start, opening, lengths, START_WORDS);
    const by = before ? openingEndsBy(segment) : startEndsBy(segment, lengths);
    const phrase = isShort(segment)
      ? sayActivity(segment.activity)
      : fullest(wordings(words[index] as ChangeWords, halfway), ms(by - at), lengths);
    const about = {
      kind: before ? 'change' : 'start',
      segment: index,
      note: segment.note,
    } as const;
    if (before) return spokenCue(about, phrase, at, lengths);
    const clips = [{ at: segment.start, clip: opening }, ...placeClips(phrase, at, lengths)];
    return cueOf(about, clips, captionOf(phrase), lengths);
  };
}

/** The first form that is heard within some time, or the last of all. */
function fullest(forms: Iterable<Phrase>, time: Ms, lengths: ClipLengths): Phrase {
  let barest: Phrase = [];
  for (const form of forms) {
    if (heardFor(form, lengths) <= time) return form;
    barest = form;
  }
  return barest;
}

/** The start's words leave room for the activity once more, where the segment is long enough. */
const startEndsBy = (segment: Segment, lengths: ClipLengths): Ms => {
  const once = ONCE_MORE + heardFor(sayActivity(segment.activity), lengths);
  return once <= wordsEndBy(segment) ? ms(ONCE_MORE - APART) : openingEndsBy(segment);
};

function placeOnceMore(room: Room | undefined, lengths: ClipLengths): void {
  if (room === undefined) return;
  const about = { kind: 'start', segment: room.segment.index } as const;
  putAt(room, about, sayActivity(room.segment.activity), ONCE_MORE, lengths);
}

/** After the long tone at the end. */
function finishCue({ segments, total }: Timeline, lengths: ClipLengths): Cue {
  const at = wordsStartAt(total, TONE.easier, lengths);
  const segment = Math.max(0, segments.length - 1);
  return spokenCue({ kind: 'finish', segment }, SAY.finish, at, lengths);
}
