import type { Talk } from '../../domain/cues/cue.ts';
import {
  planCoolDown,
  planHolding,
  planOneMore,
  planPocketCheck,
  planSample,
} from '../../domain/cues/lanes.ts';
import { planCues } from '../../domain/cues/plan-cues.ts';
import { planWaiting } from '../../domain/cues/waiting.ts';
import type { LeadPlan } from '../../domain/lead/lead-plan.ts';
import { planLeadCues } from '../../domain/lead/plan-lead-cues.ts';
import { hasCoolDown } from '../../domain/session/places.ts';
import { screenLayout } from '../../domain/session/screen-layout.ts';
import type { Medium, Purpose, Score } from '../../domain/session/session.ts';
import type { Timeline } from '../../domain/timeline/timeline.ts';
import {
  composeExport,
  composeTrack,
  leadInOf,
  type TrackPlan,
} from '../../domain/track/compose.ts';
import { clipLengths, type VoicePack } from '../../domain/track/pack.ts';
import { type Ms, ms, type Percent } from '../../domain/units.ts';
import { type Captions, captionsOf } from './captions.ts';
import { readingLengths } from './reading-lengths.ts';

/** What is to be heard or seen. */
export interface ScoreWish {
  readonly purpose: Purpose;
  readonly medium: Medium;
  readonly timeline: Timeline;
  readonly talk: Talk;
  readonly reminders: readonly string[];
  readonly target: Percent;
  /** From now to a start that was agreed ahead. */
  readonly ahead?: Ms | undefined;
  /** All groups, where they are led together. */
  readonly lead?: LeadPlan | undefined;
}

/** Everything that a session needs to run: its place in time, its sound, its captions. */
export interface Prepared {
  readonly score: Score;
  readonly captions: Captions;
  /** The whole track; a session on the screen has none. */
  readonly bytes?: Uint8Array<ArrayBuffer>;
}

/** Makes a session ready. Pure: the same wish and the same pack give the same track. */
export function prepareScore(wish: ScoreWish, pack: VoicePack | undefined): Prepared {
  const { timeline, medium } = wish;
  const plan = trackPlan(wish, pack);
  if (medium === 'sound' && pack !== undefined) {
    const { bytes, layout } = composeTrack(plan, pack);
    return { score: { timeline, layout }, captions: captionsOf(plan, layout), bytes };
  }
  const layout = screenLayout(timeline, plan.leadIn && leadInOf(plan.leadIn));
  return { score: { timeline, layout }, captions: captionsOf(plan, layout) };
}

function trackPlan(wish: ScoreWish, pack: VoicePack | undefined): TrackPlan {
  const lengths = pack === undefined ? readingLengths : clipLengths(pack.manifest);
  const { timeline, purpose, ahead, lead } = wish;
  const options = { ...wish, lengths };
  const check = purpose === 'pocket-check';
  const leadIn = ahead === undefined ? {} : { leadIn: planWaiting(ahead, lengths) };
  if (lead !== undefined) {
    const lanes = { holding: planHolding(lengths), oneMore: planOneMore(lengths) };
    return { ...leadIn, cues: planLeadCues(lead, { lengths, talk: wish.talk }), lanes };
  }
  return {
    ...leadIn,
    cues: check ? planPocketCheck(lengths) : planCues(timeline, options),
    lanes: {
      holding: planHolding(lengths),
      oneMore: planOneMore(lengths),
      ...(check || hasCoolDown(timeline) ? {} : { coolDown: planCoolDown(options) }),
    },
  };
}

/** The two minutes of the pocket check as a timeline: there is nothing to do but wait. */
export function pocketTimeline(pack: VoicePack): Timeline {
  const { total } = planPocketCheck(clipLengths(pack.manifest));
  return {
    segments: [{ index: 0, start: ms(0), end: total, part: 'main', activity: 'stand', effort: 0 }],
    total,
  };
}

/** A cue to be heard before the session, as a track of its own. */
export function prepareSample(pack: VoicePack): {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly heardUntil: Ms;
} {
  const lengths = clipLengths(pack.manifest);
  const cues = planSample(lengths);
  return { bytes: composeExport(cues, pack), heardUntil: cues.total };
}
