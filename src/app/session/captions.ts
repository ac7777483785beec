import type { Cue, CuePlan } from '../../domain/cues/cue.ts';
import type { TrackPlan } from '../../domain/track/compose.ts';
import type { Lane, TrackLayout } from '../../domain/track/layout.ts';
import { type Ms, ms } from '../../domain/units.ts';

/** What is said in one lane, in track time. */
interface Spoken {
  readonly lane: Lane;
  readonly cues: readonly Cue[];
}

/** All that is said in a track, lane by lane. */
export type Captions = readonly Spoken[];

/** What is heard at one moment. */
export interface Heard {
  /** The cue that sounds now. */
  readonly cue?: Cue;
  /** What is being said, or was said last in this lane. */
  readonly caption: string;
}

/** What is said in each lane of a track, each cue at its place in the track. */
export function captionsOf({ cues, lanes, leadIn }: TrackPlan, layout: TrackLayout): Captions {
  const spoken: Spoken[] = [
    { lane: { start: ms(0), end: layout.tail.end }, cues: cues.cues },
    { lane: layout.holding, cues: moved(lanes.holding, layout.holding.start) },
    { lane: layout.oneMore, cues: moved(lanes.oneMore, layout.oneMore.start) },
  ];
  if (lanes.coolDown !== undefined && layout.coolDown !== undefined) {
    // Its last words come after its end, in the quiet.
    const lane = { start: layout.coolDown.start, end: layout.total };
    spoken.push({ lane, cues: moved(lanes.coolDown, lane.start) });
  }
  if (leadIn !== undefined && layout.leadIn !== undefined) {
    const start = ms(-layout.leadIn.length);
    spoken.push({ lane: { start, end: ms(0) }, cues: moved(leadIn, start) });
  }
  return spoken;
}

const moved = (plan: CuePlan, by: Ms): Cue[] =>
  plan.cues.map((cue) => ({ ...cue, at: ms(cue.at + by), end: ms(cue.end + by) }));

/** What is heard at a place of the track. */
export function heardAt(captions: Captions, at: Ms): Heard {
  const lane = captions.find(({ lane }) => at >= lane.start && at < lane.end);
  if (lane === undefined) return { caption: '' };
  let index = lastAt(lane.cues, at);
  const latest = lane.cues[index];
  const cue = latest !== undefined && at < latest.end ? latest : undefined;
  // A countdown is over when it is over, and a tick says nothing; words stay until others come.
  while (isPassing(lane.cues[index], cue)) index--;
  const said = lane.cues[index];
  const caption = said === undefined ? '' : withNote(said);
  return cue === undefined ? { caption } : { cue, caption };
}

const isPassing = (last: Cue | undefined, now: Cue | undefined): boolean =>
  last?.kind === 'tick' || (last?.kind === 'countdown' && last !== now);

const withNote = ({ text, note }: Cue): string => (note ? `${text} (${note})` : text);

/** Index of the last cue that has begun, or -1. */
function lastAt(cues: readonly Cue[], at: Ms): number {
  let low = 0;
  let high = cues.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((cues[middle] as Cue).at <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
