import { DEFAULT_EFFORT } from '../programme/plan.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { ms } from '../units.ts';
import { countdownTo } from './boundary.ts';
import type { ClipLengths, Cue, CueKind, CuePlan } from './cue.ts';
import { captionOf, type Phrase, SAY, TONE } from './phrases.ts';
import { type CueOptions, planCues } from './plan-cues.ts';
import { cueOf, placeClips, spokenCue } from './speak.ts';

/** From a seek into a lane to its first word: the first frames after a seek may be lost. */
const AFTER_SEEK = ms(480);

const HOLDING = ms(1_800_000);
const HOLDING_WORD_EVERY = 120_000;

/** Half an hour on hold: what to do, then a word every two minutes so that it is not forgotten. */
export function planHolding(lengths: ClipLengths): CuePlan {
  const words = [say('start', SAY.holding, AFTER_SEEK, lengths)];
  for (let at = HOLDING_WORD_EVERY; at < HOLDING; at += HOLDING_WORD_EVERY) {
    words.push(say('reminder', SAY.stillHolding, at, lengths));
  }
  return { cues: words, total: HOLDING };
}

/** "One minute more", then a minute of quiet: `total` is where the session is gone back to. */
export function planOneMore(lengths: ClipLengths): CuePlan {
  const words = say('start', SAY.oneMore, AFTER_SEEK, lengths);
  return { cues: [words], total: ms(words.end + 60_000) };
}

/** Five minutes of easy walk, for a plan that has no cool-down. */
export const COOL_DOWN: Timeline = {
  segments: [
    {
      index: 0,
      start: ms(0),
      end: ms(300_000),
      part: 'cool-down',
      activity: 'easy walk',
      effort: DEFAULT_EFFORT['easy walk'],
    },
  ],
  total: ms(300_000),
};

/** The cool-down that is offered, with its countdown and its finish. */
export const planCoolDown = (options: CueOptions): CuePlan =>
  planCues(COOL_DOWN, { ...options, opening: TONE.easier });

const CHECK = ms(120_000);
/** Uneven, so that quiet of different lengths is tried. */
const CHECK_WORDS_AT = [20_000, 40_000, 75_000];

/** Two minutes in a pocket: does the sound go on while the phone is locked? */
export function planPocketCheck(lengths: ClipLengths): CuePlan {
  return {
    cues: [
      toneAndWords('start', TONE.wake, SAY.checkStart, 0, 1500, lengths),
      ...CHECK_WORDS_AT.map((at) => say('reminder', SAY.checkStill, at, lengths)),
      countdownTo(CHECK, { segment: 0, long: TONE.easier }, lengths),
      say('finish', SAY.checkEnd, CHECK + 700, lengths),
    ],
    total: CHECK,
  };
}

/** How a change sounds, to be heard before the session. */
export function planSample(lengths: ClipLengths): CuePlan {
  const cue = toneAndWords('change', TONE.harder, SAY.sample, 0, 700, lengths);
  return { cues: [cue], total: ms(cue.end + 1000) };
}

const say = (kind: CueKind, phrase: Phrase, at: number, lengths: ClipLengths): Cue =>
  spokenCue({ kind, segment: 0 }, phrase, ms(at), lengths);

function toneAndWords(
  kind: CueKind,
  tone: string,
  phrase: Phrase,
  at: number,
  wordsAfter: number,
  lengths: ClipLengths,
): Cue {
  const clips = [{ at: ms(at), clip: tone }, ...placeClips(phrase, ms(at + wordsAfter), lengths)];
  return cueOf({ kind, segment: 0 }, clips, captionOf(phrase), lengths);
}
