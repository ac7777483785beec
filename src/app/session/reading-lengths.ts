import type { ClipLengths } from '../../domain/cues/cue.ts';
import { CLIPS } from '../../domain/cues/vocabulary.ts';
import { msOfSeconds } from '../../domain/units.ts';

/** Read slowly: about 15 letters a second (common practice for captions, no source). */
const SECONDS_A_LETTER = 1 / 15;
const SHORTEST_WORD_S = 0.4;

/** Without a voice the words are only captions: they stay for as long as reading them takes. */
export const readingLengths: ClipLengths = {
  lengthOf(clip) {
    const spec = CLIPS[clip];
    if (spec === undefined) throw new Error(`nothing is known of a clip ${clip}`);
    if (typeof spec.say !== 'string') return msOfSeconds(spec.say.seconds);
    return msOfSeconds(Math.max(SHORTEST_WORD_S, spec.text.length * SECONDS_A_LETTER));
  },
};
