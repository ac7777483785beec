import fc from 'fast-check';
import { TALK_LEVELS } from '../../src/domain/cues/cue.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import { ms } from '../../src/domain/units.ts';
import { anyPlan } from '../domain/cues/plans.ts';
import { anyReminders, anyVoice } from '../domain/cues/voices.ts';
import { outcomes } from './outcomes.ts';

type Rules = typeof import('../../src/domain/cues/plan-cues.ts') &
  typeof import('../../src/domain/cues/waiting.ts') &
  typeof import('../../src/domain/cues/lanes.ts') &
  typeof import('../../src/domain/cues/phrases.ts');

/** Everything that is heard: in a session, in a wait, in every lane. */
export const cues = outcomes({
  parts: ['cues/plan-cues', 'cues/waiting', 'cues/lanes', 'cues/phrases'],
  inputs: fc.record({
    timeline: anyPlan.map(layOut),
    talk: fc.constantFrom(...TALK_LEVELS),
    reminders: anyReminders,
    target: fc.integer({ min: 0, max: 100 }),
    lengths: anyVoice,
    ahead: fc.oneof(fc.integer({ min: 1, max: 20_000 }), fc.integer({ min: 1, max: 1_800_000 })),
    groups: fc.subarray([1, 2, 3, 4, 5, 6, 7, 8], { minLength: 1 }),
  }),
  of(rules: Rules, { timeline, ahead, groups, ...options }) {
    const { lengths } = options;
    const said = [...rules.sayGroups(groups), ...rules.sayTimeLeft(ms(Math.max(1000, ahead)))];
    const pauses = said.map((clip, i) => rules.pauseBetween(said[i - 1] ?? 'tone.wake', clip));
    return [
      rules.planCues(timeline, options),
      rules.planWaiting(ms(ahead), lengths),
      rules.planHolding(lengths),
      rules.planOneMore(lengths),
      rules.planCoolDown(options),
      rules.planPocketCheck(lengths),
      rules.planSample(lengths),
      [said, pauses, rules.captionOf(said)],
    ];
  },
});
