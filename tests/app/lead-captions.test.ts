import { expect, test } from 'vitest';
import { captionsOf, heardAt } from '../../src/app/session/captions.ts';
import { planHolding, planOneMore } from '../../src/domain/cues/lanes.ts';
import { planLeadCues } from '../../src/domain/lead/plan-lead-cues.ts';
import { composeTrack } from '../../src/domain/track/compose.ts';
import { clipLengths } from '../../src/domain/track/pack.ts';
import { together } from '../domain/lead/lead-plans.ts';
import { silentPack } from '../drivers/voice.ts';

test('LEAD-10 a tick leaves the words that were said before it on the screen', () => {
  const pack = silentPack();
  const lengths = clipLengths(pack.manifest);
  const cues = planLeadCues({ ...together('5 min walk', '6 min run'), tick: true }, { lengths });
  const track = { cues, lanes: { holding: planHolding(lengths), oneMore: planOneMore(lengths) } };
  const captions = captionsOf(track, composeTrack(track, pack).layout);
  const tick = cues.cues.find(({ kind }) => kind === 'tick');
  if (tick === undefined) throw new Error('nothing ticks');
  expect(heardAt(captions, tick.at).caption).toBe(
    'Here we go. Group 1: walk, five minutes. Group 2: run, six minutes.',
  );
});
