import type { Talk } from '../../../src/domain/cues/cue.ts';
import { planCoolDown, planHolding, planOneMore } from '../../../src/domain/cues/lanes.ts';
import type { TrackPlan } from '../../../src/domain/track/compose.ts';
import { clipLengths, type VoicePack } from '../../../src/domain/track/pack.ts';
import { sessionOf } from './demo-sessions.ts';

/** A whole track's plan, lanes included, of a session in shorthand. */
export function trackOf(text: string, pack: VoicePack, talk: Talk = 'usual'): TrackPlan {
  const lengths = clipLengths(pack.manifest);
  const { timeline, cues } = sessionOf(text, pack, talk);
  const hasCoolDown = timeline.segments.some(({ part }) => part === 'cool-down');
  const options = { talk, reminders: [], target: 50, lengths };
  return {
    cues,
    lanes: {
      holding: planHolding(lengths),
      oneMore: planOneMore(lengths),
      coolDown: hasCoolDown ? undefined : planCoolDown(options),
    },
  };
}

/** A walk-and-run session of some minutes, with a change every one or two minutes. */
export const sessionOfMinutes = (minutes: number): string => {
  const [sets, rest] = [Math.floor((minutes - 10) / 3), (minutes - 10) % 3];
  const cool = `${5 + rest} min easy walk`;
  return sets > 50
    ? `5 min easy walk; 2 x (${Math.ceil(sets / 2)} x (1 min walk, 2 min run)); ${cool}`
    : `5 min easy walk; ${sets} x (1 min walk, 2 min run); ${cool}`;
};
