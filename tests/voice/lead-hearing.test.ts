import { describe, expect, it } from 'vitest';
import type { PlacedClip } from '../../src/domain/cues/cue.ts';
import { planLeadCues } from '../../src/domain/lead/plan-lead-cues.ts';
import { ACTIVITIES } from '../../src/domain/programme/plan.ts';
import { clipLengths } from '../../src/domain/track/pack.ts';
import { ms } from '../../src/domain/units.ts';
import { randomFrom } from '../../src/voice/build/hearing/noise.ts';
import {
  type Spoken,
  sayActivities,
  sayDurations,
  wordsOf,
} from '../../src/voice/build/hearing/phrases.ts';
import { percent, report, score } from '../../src/voice/build/hearing/score.ts';
import { hearPlaced } from '../../src/voice/build/hearing/sound.ts';
import { demoTogether, group } from '../domain/lead/lead-plans.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/**
 * The same recogniser as for one session's changes (Debian's pocketsphinx with its US English
 * model). It chooses from any number of clauses, each of any groups in their order, any activity,
 * and with any length or none.
 */
const pack = voicePack();
const CLEAR = Number.POSITIVE_INFINITY;

const either = (phrases: readonly { words: string }[]): string =>
  [...new Set(phrases.map(({ words }) => words))].join(' | ');

const GRAMMAR = [
  '#JSGF V1.0;',
  'grammar lead;',
  'public <cue> = <clause>+;',
  '<clause> = <who> <what> [<duration>];',
  '<number> = one | two | three | four | five | six | seven | eight;',
  '<list> = [one] [two] [three] [four] [five] [six] [seven];',
  '<who> = all groups | group <number> | groups <list> and <number>;',
  `<what> = ${either(sayActivities())} | finished | carry on;`,
  `<duration> = ${either(sayDurations())};`,
  '',
].join('\n');

interface Sentence extends Spoken {
  readonly placed: readonly PlacedClip[];
}

/** What a plan says at its changes, each sentence once, at the places that it gives its words. */
function sentencesOf(...plans: Parameters<typeof planLeadCues>[0][]): Sentence[] {
  const lengths = clipLengths(pack.manifest);
  const found = new Map<string, Sentence>();
  for (const plan of plans) {
    for (const cue of planLeadCues(plan, { lengths }).cues) {
      if (cue.kind !== 'change') continue;
      const words = cue.clips.filter(({ clip }) => !clip.startsWith('tone.'));
      const first = words[0]?.at ?? 0;
      const clips = words.map(({ clip }) => clip);
      const placed = words.map(({ clip, at }) => ({ clip, at: ms(at - first) }));
      found.set(wordsOf(clips), { clips, words: wordsOf(clips), placed });
    }
  }
  return [...found.values()];
}

/** Any of eight groups doing one of two or three things, changing together. */
function anySentences(count: number, seed: number): Sentence[] {
  const random = randomFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const plans = Array.from({ length: count }, (_, i) => {
    const things = Array.from({ length: 1 + (i % 3) }, () => pick(ACTIVITIES));
    const who = [1, 2, 3, 4, 5, 6, 7, 8].filter(() => random() < 0.5);
    const groups = (who.length === 0 ? [1] : who).map((number) =>
      group(number, `1 min stand; main: 2 min ${pick(things)}; 2 min ${pick(things)}`),
    );
    return { groups: [...groups], tick: false };
  });
  return sentencesOf(...plans);
}

async function heard(name: string, sentences: readonly Sentence[], snr: number, seeds: number[]) {
  const sounds = hearPlaced(
    sentences.map(({ placed }) => placed),
    pack,
  );
  const result = await score(sentences, sounds, snr, seeds, GRAMMAR);
  console.log(report(name, result, 12));
  return percent(result);
}

describe('what is said to several groups at once', () => {
  const demo = sentencesOf(demoTogether(3, 120));
  const any = anySentences(12, 11);

  it('VOICE-14 the demo has sentences of one, two and three clauses', () => {
    const clauses = demo.map(({ words }) => words.match(/group/g)?.length ?? 0);
    expect(new Set(clauses)).toContain(1);
    expect(Math.max(...clauses)).toBeGreaterThanOrEqual(3);
    expect(demo.length).toBeGreaterThan(20);
  });

  it.each([
    [CLEAR, 95],
    [5, 90],
  ])(
    'VOICE-14 the demo is understood at %d dB: %i in 100 sentences or more',
    async (snr, least) => {
      expect(await heard('demo, to all groups', demo, snr, [1])).toBeGreaterThanOrEqual(least);
    },
  );

  it.each([
    [CLEAR, 95],
    [5, 90],
  ])('VOICE-14 any groups are understood at %d dB: %i in 100 or more', async (snr, least) => {
    expect(await heard('any groups', any, snr, [1])).toBeGreaterThanOrEqual(least);
  });
});
