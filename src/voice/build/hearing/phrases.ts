import { sayActivity, sayDuration } from '../../../domain/cues/phrases.ts';
import type { ClipId } from '../../../domain/cues/vocabulary.ts';
import { CLIPS } from '../../../domain/cues/vocabulary.ts';
import { ACTIVITIES, type Activity } from '../../../domain/programme/plan.ts';
import { msOfSeconds } from '../../../domain/units.ts';

const range = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);

/** In seconds: what a leader is likely to write, from 5 s to 2 h 30. */
export const DURATIONS: readonly number[] = [
  ...range(5, 115, 5),
  ...range(2, 30, 1).map((minutes) => 60 * minutes),
  ...range(2, 16, 1).map((minutes) => 60 * minutes + 30),
  ...range(2, 4, 1).flatMap((minutes) => [60 * minutes + 15, 60 * minutes + 45]),
  ...range(35, 75, 5).map((minutes) => 60 * minutes),
  ...range(80, 150, 10).map((minutes) => 60 * minutes),
];

/** Some clips, and what a listener should understand. */
export interface Spoken {
  readonly clips: readonly ClipId[];
  /** Lower case, without punctuation: what a recogniser is to answer. */
  readonly words: string;
}

/** The words of some clips as they are spoken. */
export function wordsOf(clips: readonly ClipId[]): string {
  const said = clips.map((clip) => CLIPS[clip]?.say).filter((say) => typeof say === 'string');
  return said
    .join(' ')
    .toLowerCase()
    .replaceAll(/[-]/g, ' ')
    .replaceAll(/[^a-z ]/g, '');
}

const spoken = (clips: readonly ClipId[]): Spoken => ({ clips, words: wordsOf(clips) });

/** Every activity by itself. */
export const sayActivities = (): Spoken[] => ACTIVITIES.map((a) => spoken(sayActivity(a)));
/** Every length of time by itself. */
export const sayDurations = (): Spoken[] =>
  DURATIONS.map((seconds) => spoken(sayDuration(msOfSeconds(seconds))));

/** An activity for a number of seconds. */
export const instruction = (activity: Activity, seconds: number): Spoken =>
  spoken([...sayActivity(activity), ...sayDuration(msOfSeconds(seconds))]);
