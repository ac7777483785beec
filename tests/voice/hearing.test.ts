import { beforeAll, describe, expect, it } from 'vitest';
import type { ClipId } from '../../src/domain/cues/vocabulary.ts';
import { ACTIVITIES } from '../../src/domain/programme/plan.ts';
import { randomFrom } from '../../src/voice/build/hearing/noise.ts';
import { DURATIONS, instruction, type Spoken } from '../../src/voice/build/hearing/phrases.ts';
import { percent, report, score } from '../../src/voice/build/hearing/score.ts';
import { hear } from '../../src/voice/build/hearing/sound.ts';
import { demoSessions } from '../drivers/sound/demo-sessions.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/**
 * An independent recogniser, Debian's pocketsphinx with its US English model and a grammar of
 * all activities and about 90 durations, hears what a session's track holds. A recogniser is
 * no ear: the numbers serve to compare voices and to notice when one gets worse.
 */
const pack = voicePack();
const SEEDS = [1, 2, 3, 4, 5];
const CLEAR = Number.POSITIVE_INFINITY;

/** What each change of the demo programme says of activity and duration, each once. */
function demoInstructions(): Spoken[] {
  const found = new Map<string, Spoken>();
  for (const { timeline } of demoSessions(pack, 'few')) {
    for (const { activity, start, end } of timeline.segments) {
      const said = instruction(activity, (end - start) / 1000);
      found.set(said.words, said);
    }
  }
  return [...found.values()];
}

function randomInstructions(count: number, seed: number): Spoken[] {
  const random = randomFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  return Array.from({ length: count }, () => instruction(pick(ACTIVITIES), pick(DURATIONS)));
}

const clipsOf = (phrases: readonly Spoken[]): (readonly ClipId[])[] =>
  phrases.map(({ clips }) => clips);

describe('the changes of the demo programme', () => {
  const phrases = demoInstructions();
  let sounds: Float64Array[] = [];
  beforeAll(() => {
    sounds = hear(clipsOf(phrases), pack);
  });

  it('VOICE-10 are the instructions that its sessions speak', () => {
    const spoken = demoSessions(pack, 'few').flatMap(({ cues }) =>
      cues.cues
        .filter(({ kind }) => kind === 'change')
        .map(({ clips }) => clips.map(({ clip }) => clip)),
    );
    const known = new Set(phrases.map(({ clips }) => clips.join(' ')));
    for (const clips of spoken) {
      const words = clips.filter((clip) =>
        /^(activity|number|hours|word\.(and|minutes?|seconds?))/.test(clip),
      );
      expect(known, clips.join(' ')).toContain(words.join(' '));
    }
    expect(phrases.length).toBeGreaterThan(20);
  });

  it('VOICE-10 are understood in the clear, by two decoders', async () => {
    for (const decoder of ['ffmpeg', 'mpg123'] as const) {
      const result = await score(phrases, hear(clipsOf(phrases), pack, decoder), CLEAR, [0]);
      console.log(report(`demo, ${decoder}`, result));
      expect(percent(result)).toBeGreaterThanOrEqual(98);
    }
  });

  it.each([
    [5, 98],
    [0, 92],
  ])(
    'VOICE-10 are understood in pink noise %i dB below the voice: %i in 100 or more',
    async (snr, least) => {
      const result = await score(phrases, sounds, snr, SEEDS);
      console.log(report('demo, five seeds', result));
      expect(percent(result)).toBeGreaterThanOrEqual(least);
    },
  );
});

describe('100 instructions at random', () => {
  const phrases = randomInstructions(100, 7);

  it.each([
    [CLEAR, 98],
    [5, 98],
    [0, 85],
  ])('VOICE-10 are understood at %d dB: %i in 100 or more', async (snr, least) => {
    const result = await score(
      phrases,
      hear(clipsOf(phrases), pack),
      snr,
      snr === CLEAR ? [0] : SEEDS.slice(0, 3),
    );
    console.log(report('at random', result));
    expect(percent(result)).toBeGreaterThanOrEqual(least);
  });
});
