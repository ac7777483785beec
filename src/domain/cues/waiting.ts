import { type Ms, ms } from '../units.ts';
import { countdownTo } from './boundary.ts';
import type { ClipLengths, Cue, CueKind, CuePlan } from './cue.ts';
import { captionOf, type Phrase, SAY, sayTimeLeft, TONE } from './phrases.ts';
import { cueOf, placeClips, spokenCue } from './speak.ts';

const MINUTE = 60_000;

/** Before the place of the tap, for a clock that turns out to be fast. */
const SPARE = MINUTE;
/** From the tap to the first sound: the first frames after a seek may be lost. */
const AFTER_SEEK = 480;
/** From the first sound to its words. */
const WORDS_AFTER = 1500;
/** Quiet between two things that are said. */
const APART = 1000;
/** Minutes before the start at which the time left is said; a soft tick marks the others. */
const SAID_AT: readonly number[] = [25, 20, 15, 10, 5, 2, 1];
const TEN_SECONDS = 10_000;

/**
 * What is heard until a start that was agreed ahead: at once that the wait has begun, then the
 * time left, a soft tick at every other minute so that no one thinks the sound gone, and at the
 * end three short tones. The start's own tone is the session's first.
 *
 * @param ahead from the tap to the start, more than 0
 * @returns cues from 0 to `total`, which is the start: a whole minute, and so the start of a frame
 */
export function planWaiting(ahead: Ms, lengths: ClipLengths): CuePlan {
  const total = ms(Math.ceil(ahead / MINUTE) * MINUTE + SPARE);
  const tap = total - ahead;
  const first = firstWords(tap, total, lengths);
  const from = first === undefined ? tap + AFTER_SEEK : first.end + APART;
  const marks = marksOf(total, lengths).filter(({ at }) => at >= from);
  return { cues: first === undefined ? marks : [first, ...marks], total };
}

/** That the wait has begun, after a tone by which the sound is known to be there. */
function firstWords(tap: number, total: Ms, lengths: ClipLengths): Cue | undefined {
  const at = ms(tap + AFTER_SEEK);
  const words = ms(at + WORDS_AFTER);
  const over = total - TEN_SECONDS - APART;
  // Asked before the words are made: there is none for a time left under half a second.
  if (words >= over) return undefined;
  const phrase = waitingFor(ms(total - words));
  const clips = [{ at, clip: TONE.wake }, ...placeClips(phrase, words, lengths)];
  const cue = cueOf({ kind: 'start', segment: 0 }, clips, captionOf(phrase), lengths);
  return cue.end <= over ? cue : undefined;
}

/** What is heard whenever the tap was, in order. */
function marksOf(total: Ms, lengths: ClipLengths): Cue[] {
  const cues: Cue[] = [];
  for (let left = total - SPARE; left >= MINUTE; left -= MINUTE) {
    const said = SAID_AT.includes(left / MINUTE);
    const [kind, phrase]: [CueKind, Phrase] = said
      ? ['remaining', waitingFor(ms(left))]
      : ['reminder', [TONE.tick]];
    cues.push(spokenCue({ kind, segment: 0 }, phrase, ms(total - left), lengths));
  }
  const last = ms(total - TEN_SECONDS);
  cues.push(spokenCue({ kind: 'remaining', segment: 0 }, SAY.tenSeconds, last, lengths));
  return [...cues, countdownTo(total, { segment: 0 }, lengths)];
}

/** "Waiting for the start. Two minutes to go." */
const waitingFor = (left: Ms): Phrase => [...SAY.waiting, ...sayTimeLeft(left)];
