import type { Cue, CuePlan } from '../../../src/domain/cues/cue.ts';
import { sayActivity } from '../../../src/domain/cues/phrases.ts';
import type { LeadPlan } from '../../../src/domain/lead/lead-plan.ts';
import type { Segment } from '../../../src/domain/timeline/timeline.ts';

/** What one group is told, by the clip that says it, read from the clips alone. */
export interface Told {
  readonly number: number;
  readonly what: string;
}

/** Everything that is heard of changes in one go. */
export interface Heard {
  /** Where its long tone is, or its first call where nobody is spoken to. */
  readonly at: number;
  readonly tone: string | undefined;
  /** Times of the short tones before it. */
  readonly short: readonly number[];
  readonly told: readonly Told[];
  readonly called: readonly number[];
  /** Clips that say a length of time. */
  readonly lengths: readonly string[];
  readonly wordsAt: number | undefined;
  readonly end: number;
  readonly cue: Cue;
}

const LONG = /^tone\.(wake|rise|fall|level)$/;
const CALL = /^tone\.group-(\d)$/;
const WHAT = /^(activity\.|phrase\.(finished|carry-on)$)/;

/** What is heard of changes, read from the cues by a reader of its own. */
export function heardOf({ cues }: CuePlan, plan: LeadPlan): Heard[] {
  return cues.flatMap((cue, i) => {
    if (!['start', 'change', 'finish'].includes(cue.kind)) return [];
    const before = cues[i - 1];
    const counted = before?.kind === 'countdown' ? before.clips : [];
    const clips = [...counted, ...cue.clips];
    const long = clips.find(({ clip }) => LONG.test(clip));
    const calls = clips.filter(({ clip }) => CALL.test(clip));
    const words = clips.filter(({ clip }) => !clip.startsWith('tone.'));
    const { told, lengths } = read(
      words.map(({ clip }) => clip),
      plan,
    );
    return [
      {
        at: long?.at ?? calls[0]?.at ?? Number.NaN,
        tone: long?.clip,
        short: clips.filter(({ clip }) => clip === 'tone.short').map(({ at }) => at),
        told,
        called: calls.map(({ clip }) => Number(CALL.exec(clip)?.[1])),
        lengths,
        wordsAt: words[0]?.at,
        end: cue.end,
        cue,
      },
    ];
  });
}

function read(words: readonly string[], { groups }: LeadPlan) {
  const told: Told[] = [];
  const lengths: string[] = [];
  let who: number[] = [];
  let isNaming = false;
  for (const clip of words) {
    if (clip === 'word.group' || clip === 'word.groups') [who, isNaming] = [[], true];
    else if (clip === 'phrase.all-groups') who = groups.map(({ number }) => number);
    else if (WHAT.test(clip)) {
      told.push(...who.map((number) => ({ number, what: clip })));
      isNaming = false;
    } else if (isNaming && clip.startsWith('number.')) who.push(Number(clip.slice(7)));
    else if (/^(number|hours|word\.(minute|second))/.test(clip)) lengths.push(clip);
  }
  return { told, lengths };
}

/** A change as the plan has it. */
export interface Planned {
  readonly at: number;
  readonly number: number;
  readonly what: string;
  readonly before: Segment | undefined;
  readonly after: Segment | undefined;
}

/** Every change of the groups with a voice, straight from their own timelines, in order of time. */
export function plannedOf(plan: LeadPlan, voice: 'words' | 'tone'): Planned[] {
  return plan.groups
    .filter((group) => group.voice === voice)
    .flatMap(({ number, startsAt, timeline: { segments, total } }) => [
      ...segments.map((after, i) => {
        const before = segments[i - 1];
        const same = before?.activity === after.activity && before.effort === after.effort;
        const what = same ? 'phrase.carry-on' : (sayActivity(after.activity)[0] ?? '');
        return { at: startsAt + after.start, number, what, before, after };
      }),
      {
        ...{ at: startsAt + total, number, what: 'phrase.finished' },
        ...{ before: segments.at(-1), after: undefined },
      },
    ])
    .sort((a, b) => a.at - b.at);
}
