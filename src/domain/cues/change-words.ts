import { DEFAULT_EFFORT } from '../programme/plan.ts';
import type { Segment } from '../timeline/timeline.ts';
import type { Percent } from '../units.ts';
import type { Talk } from './cue.ts';
import { type Phrase, SAY, sayActivity, sayDuration, sayEffort, sayPart } from './phrases.ts';
import { lengthOf } from './short.ts';
import { type TurnWords, turnWords } from './turns.ts';

/** All that may be said where a segment begins. */
export interface ChangeWords {
  readonly part: Phrase;
  readonly turns: TurnWords;
  readonly carryOn: Phrase;
  readonly activity: Phrase;
  readonly duration: Phrase;
  readonly effort: Phrase;
}

/**
 * What may be said at the start of every segment.
 *
 * @param target effort for the whole session, said where the main part begins
 */
export function changeWords(
  segments: readonly Segment[],
  talk: Talk,
  target: Percent,
): ChangeWords[] {
  const turns = turnWords(segments);
  const onlyMain = segments.every(({ part }) => part === 'main');
  const told = new Set<string>();
  return segments.map((segment, i) => {
    const before = segments[i - 1];
    const bare = {
      activity: sayActivity(segment.activity),
      duration: sayDuration(lengthOf(segment)),
    };
    if (talk === 'few') return { ...NOTHING, ...bare };
    const newPart = segment.part !== before?.part;
    const effort = effortToSay(segment, before, target, told);
    return {
      part: newPart && !onlyMain ? sayPart(segment.part) : [],
      turns: turns[i] ?? NOTHING.turns,
      carryOn: goesOn(segment, before) ? SAY.carryOn : [],
      ...bare,
      effort: effort === undefined ? [] : sayEffort(effort),
    };
  });
}

const NOTHING = { part: [], turns: { full: [], short: [] }, carryOn: [], effort: [] } as const;

const goesOn = (segment: Segment, before: Segment | undefined): boolean =>
  segment.activity === before?.activity && segment.effort === before.effort;

/**
 * The effort that is said with a change: the target where the main part begins; an effort that
 * the leader wrote, where it is new in its part or is all that changes.
 */
function effortToSay(
  segment: Segment,
  before: Segment | undefined,
  target: Percent,
  told: Set<string>,
): Percent | undefined {
  const { part, activity, effort } = segment;
  if (hasOwnEffort(segment)) {
    const key = `${part} ${activity} ${effort}`;
    const isNew = !told.has(key) || (activity === before?.activity && effort !== before.effort);
    told.add(key);
    return isNew ? effort : undefined;
  }
  return part === 'main' && before?.part !== 'main' ? target : undefined;
}

/** Whether the leader wrote an effort that is not the activity's own. */
export const hasOwnEffort = ({ activity, effort }: Segment): boolean =>
  effort !== DEFAULT_EFFORT[activity];

/**
 * The words of a change from the fullest form to the barest: effort goes first, then halfway,
 * "carry on", the part, "of m", the set, the duration. The last is the activity alone.
 */
export function* wordings(words: ChangeWords, halfway: Phrase): Generator<Phrase> {
  const { part, turns, carryOn, activity, duration, effort } = words;
  yield [...part, ...turns.full, ...carryOn, ...activity, ...duration, ...halfway, ...effort];
  yield [...part, ...turns.full, ...carryOn, ...activity, ...duration, ...halfway];
  yield [...part, ...turns.full, ...carryOn, ...activity, ...duration];
  yield [...part, ...turns.full, ...activity, ...duration];
  yield [...turns.full, ...activity, ...duration];
  yield [...turns.short, ...activity, ...duration];
  yield [...activity, ...duration];
  yield activity;
}
