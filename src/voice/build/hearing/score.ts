import type { Spoken } from './phrases.ts';
import { grammar, inNoise, recognise } from './recognise.ts';

/** How much of what was said was understood, at one loudness of noise. */
export interface Score {
  readonly snrDb: number;
  readonly asked: number;
  readonly exact: number;
  /** What was heard for what was said, with how often, the most frequent first. */
  readonly confusions: readonly {
    readonly said: string;
    readonly heard: string;
    readonly times: number;
  }[];
}

/** Percent heard exactly. */
export const percent = ({ exact, asked }: Score): number => (100 * exact) / asked;

/**
 * How many phrases the recogniser gets exactly, in pink noise so many decibels below the active
 * level of each. Every phrase meets other noise for every seed.
 *
 * @param text the grammar that it chooses from
 */
export async function score(
  phrases: readonly Spoken[],
  sounds: readonly Float64Array[],
  snrDb: number,
  seeds: readonly number[],
  text = grammar(),
): Promise<Score> {
  const noisy = seeds.flatMap((seed) =>
    sounds.map((sound, i) => inNoise(sound, snrDb, 10_000 * seed + i)),
  );
  const heard = await recognise(noisy, text);
  const confusions = new Map<string, { said: string; heard: string; times: number }>();
  heard.forEach((words, i) => {
    const said = phrases[i % phrases.length]?.words ?? '';
    if (words === said) return;
    const key = `${said}|${words}`;
    const before = confusions.get(key);
    confusions.set(key, { said, heard: words, times: (before?.times ?? 0) + 1 });
  });
  const list = [...confusions.values()].sort((a, b) => b.times - a.times);
  const missed = list.reduce((sum, { times }) => sum + times, 0);
  return { snrDb, asked: heard.length, exact: heard.length - missed, confusions: list };
}

/** A score in a few lines of text, with its most frequent confusions. */
export function report(name: string, result: Score, most = 25): string {
  const { snrDb, asked, exact, confusions } = result;
  const noise = Number.isFinite(snrDb) ? `${snrDb} dB` : 'clear';
  const head = `${name}, ${noise}: ${exact} of ${asked} exact, ${percent(result).toFixed(1)} %`;
  const lines = confusions
    .slice(0, most)
    .map(({ said, heard, times }) => `  ${times} x ${said} -> ${heard || '(nothing)'}`);
  return [head, ...lines].join('\n');
}
