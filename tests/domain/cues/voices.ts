import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { ClipLengths, Cue, CuePlan, Talk } from '../../../src/domain/cues/cue.ts';
import { TALK_LEVELS } from '../../../src/domain/cues/cue.ts';
import { type CueOptions, planCues } from '../../../src/domain/cues/plan-cues.ts';
import { REMINDER_IDS } from '../../../src/domain/cues/reminders.ts';
import { CLIPS } from '../../../src/domain/cues/vocabulary.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import type { Timeline } from '../../../src/domain/timeline/timeline.ts';
import { clipLengths, type VoiceManifest } from '../../../src/domain/track/pack.ts';
import { ms, type Percent } from '../../../src/domain/units.ts';
import { anyPlan, timelineOf } from './plans.ts';

/** Tones as long as the vocabulary makes them. */
function toneLength(clip: string): number {
  const say = CLIPS[clip]?.say;
  return typeof say === 'object' ? say.seconds * 1000 : Number.NaN;
}

const voice = (wordLength: (clip: string) => number): ClipLengths => ({
  lengthOf: (clip) => {
    if (CLIPS[clip] === undefined) throw new Error(`no clip ${clip}`);
    return ms(clip.startsWith('tone.') ? toneLength(clip) : wordLength(clip));
  },
});

/** Every spoken clip as long as another: words can be counted by hand. */
export const evenVoice = (length: number): ClipLengths => voice(() => length);

/** Lengths that have nothing to do with the words, from 0.15 s to 2.3 s. */
export const oddVoice = (salt: number): ClipLengths =>
  voice((clip) => {
    let hash = salt;
    for (const sign of clip) hash = (hash * 31 + sign.charCodeAt(0)) % 99_991;
    return 150 + (hash % 2150);
  });

const manifest = JSON.parse(
  readFileSync(new URL('../../../src/voice/pack/manifest.json', import.meta.url), 'utf8'),
) as VoiceManifest;

/** The voice that is shipped. */
export const REAL_VOICE = clipLengths(manifest);

export const anyVoice: fc.Arbitrary<ClipLengths> = fc.oneof(
  fc.constant(REAL_VOICE),
  fc.integer({ min: 150, max: 2000 }).map(evenVoice),
  fc.nat(99_990).map(oddVoice),
);

export const FREE_REMINDERS = ['Wave at the herons', 'Mind the sluice gate'];

export const anyReminders: fc.Arbitrary<string[]> = fc.shuffledSubarray([
  ...REMINDER_IDS,
  ...FREE_REMINDERS,
]);

export interface Heard {
  readonly timeline: Timeline;
  readonly options: CueOptions;
  readonly plan: CuePlan;
}

/** Any session as it is heard, at some levels of talk. */
export const anyHeard = (...levels: Talk[]): fc.Arbitrary<Heard> =>
  fc
    .record({
      timeline: anyPlan.map(layOut),
      talk: fc.constantFrom(...(levels.length === 0 ? TALK_LEVELS : levels)),
      reminders: anyReminders,
      target: fc.integer({ min: 0, max: 100 }),
      lengths: anyVoice,
    })
    .map(({ timeline, ...options }) => ({ timeline, options, plan: planCues(timeline, options) }));

export interface Sound {
  readonly clip: string;
  readonly at: number;
  readonly end: number;
}

/** Every sound of some cues, in their order. */
export const soundsOf = (cues: readonly Cue[], lengths: ClipLengths): Sound[] =>
  cues.flatMap(({ clips }) =>
    clips.map(({ clip, at }) => ({ clip, at, end: at + lengths.lengthOf(clip) })),
  );

export const isTone = (clip: string): boolean => clip.startsWith('tone.');

/** Where the first word of a cue is. */
export const wordsAt = (cue: Cue): number => cue.clips.find(({ clip }) => !isTone(clip))?.at ?? NaN;

/** The words where each segment of a session in shorthand begins. */
export function wordsOf(
  text: string,
  lengths = REAL_VOICE,
  talk: Talk = 'usual',
  target: Percent = 50,
): string[] {
  const { cues } = planCues(timelineOf(text), { talk, reminders: [], target, lengths });
  return cues.filter(({ kind, at }) => kind === 'change' || at === 0).map((cue) => cue.text);
}
