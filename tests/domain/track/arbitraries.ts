import fc from 'fast-check';
import type { CuePlan, PlacedClip } from '../../../src/domain/cues/cue.ts';
import type { TrackPlan } from '../../../src/domain/track/compose.ts';
import type { VoicePack } from '../../../src/domain/track/pack.ts';
import { FRAME_MS, ms } from '../../../src/domain/units.ts';
import { clipName, planOf, syntheticPack } from '../../drivers/sound/synthetic-pack.ts';

/** A clip as an encoder leaves it: lead-in with the coders' delay, sound, a tail. */
const shape = fc
  .record({
    onsetMs: fc.integer({ min: 46, max: 150 }),
    lengthMs: fc.integer({ min: 20, max: 1500 }),
    tailFrames: fc.integer({ min: 0, max: 6 }),
  })
  .map(({ onsetMs, lengthMs, tailFrames }) => ({
    onsetMs: ms(onsetMs),
    lengthMs: ms(lengthMs),
    frames: Math.ceil((onsetMs + lengthMs) / FRAME_MS) + tailFrames,
  }));

const shapes = fc.array(shape, { minLength: 1, maxLength: 6 });

/** Clips one after another with quiet of `least` ms or more between their sounds. */
export function plan(
  from: VoicePack,
  { least, maxClips }: { least: number; maxClips: number },
): fc.Arbitrary<CuePlan> {
  const names = Object.keys(from.manifest.clips).length;
  return fc
    .record({
      first: fc.integer({ min: 0, max: 2000 }),
      steps: fc.array(
        fc.record({ index: fc.nat(names - 1), pause: fc.integer({ min: least, max: 4000 }) }),
        { maxLength: maxClips },
      ),
      after: fc.integer({ min: 0, max: 5000 }),
    })
    .map(({ first, steps, after }) => {
      const placed: PlacedClip[] = [];
      let at = first;
      for (const { index, pause } of steps) {
        const clip = clipName(index);
        placed.push({ at: ms(at), clip });
        at += (from.manifest.clips[clip]?.lengthMs ?? 0) + pause;
      }
      return planOf(placed, from, at + after);
    });
}

/** A whole track plan and the shapes of the clips that it uses. `least` as in {@link plan}. */
const shapesAndPlan = (least: number) =>
  shapes.chain((made) => {
    const pack = syntheticPack(made);
    const lane = plan(pack, { least, maxClips: 4 });
    return fc.record({
      shapes: fc.constant(made),
      plan: fc.record({
        cues: plan(pack, { least, maxClips: 12 }),
        lanes: fc.record(
          { holding: lane, oneMore: lane.map(withMinute), coolDown: lane },
          { requiredKeys: ['holding', 'oneMore'] },
        ),
      }),
    });
  });

const withMinute = (words: CuePlan): CuePlan => ({ ...words, total: ms(words.total + 60_000) });

/** Check something of many plans. The pack is made inside, so that a counterexample can be read. */
export function forEveryTrack(
  least: number,
  numRuns: number,
  check: (pack: VoicePack, plan: TrackPlan) => void,
): void {
  const property = fc.property(shapesAndPlan(least), ({ shapes: made, plan: track }) => {
    check(syntheticPack(made), track);
  });
  fc.assert(property, { numRuns });
}
