import type { ClipLengths, Cue } from '../cues/cue.ts';
import { SAY, sayDuration, sayTimeLeft } from '../cues/phrases.ts';
import { cueOf } from '../cues/speak.ts';
import { type Ms, ms } from '../units.ts';
import { APART } from './change-cues.ts';
import { sayWho } from './clauses.ts';
import type { LeadGroup, LeadPlan } from './lead-plan.ts';
import { endOf } from './moments.ts';
import { type Clause, lengthOfSentence, placeSentence, sentenceOf } from './sentence.ts';

/** How long before a group starts or ends it is told so. */
const TOLD_BEFORE: readonly Ms[] = [ms(60_000), ms(10_000)];

/** Least quiet between two spoken cues. */
const WORDS_APART = 1000;

/** Groups that start, and groups that end, so long after a time. */
interface Mark {
  readonly at: Ms;
  readonly left: Ms;
  readonly start: LeadGroup[];
  readonly end: LeadGroup[];
}

/**
 * "Group two: get ready, one minute" and "Group one: one minute to go", and the same ten seconds
 * before a spoken group starts or ends: exactly then, and only where nothing else is heard.
 *
 * @param others the cues of changes, in order
 */
export function timeLeftCues(plan: LeadPlan, others: readonly Cue[], lengths: ClipLengths): Cue[] {
  const cues: Cue[] = [];
  for (const mark of marksOf(plan)) {
    const sentence = sentenceOf(clausesOf(mark, plan));
    const end = ms(mark.at + lengthOfSentence(sentence, lengths));
    const isFree =
      others.every((other) => other.end + WORDS_APART <= mark.at || end + APART <= other.at) &&
      cues.every((other) => other.end + WORDS_APART <= mark.at || end + WORDS_APART <= other.at);
    if (!isFree) continue;
    const before = others.findLast(({ at }) => at <= mark.at);
    const about = { kind: 'remaining', segment: before?.segment ?? 0 } as const;
    const clips = placeSentence(sentence, mark.at, lengths);
    cues.push(cueOf(about, clips, sentence.text, lengths));
  }
  return cues;
}

function marksOf(plan: LeadPlan): Mark[] {
  const marks = new Map<string, Mark>();
  const put = (moment: Ms, kind: 'start' | 'end', group: LeadGroup): void => {
    for (const left of TOLD_BEFORE) {
      const at = ms(moment - left);
      const mark = marks.get(`${at} ${left}`) ?? { at, left, start: [], end: [] };
      mark[kind].push(group);
      marks.set(`${at} ${left}`, mark);
    }
  };
  for (const group of plan.groups) {
    if (group.voice !== 'words') continue;
    put(group.startsAt, 'start', group);
    put(endOf(group), 'end', group);
  }
  return [...marks.values()].filter(({ at }) => at > 0).sort((a, b) => a.at - b.at);
}

function clausesOf({ left, start, end }: Mark, plan: LeadPlan): Clause[] {
  const ends = { who: sayWho(end, plan), what: sayTimeLeft(left) };
  const starts = { who: sayWho(start, plan), what: SAY.getReady, length: sayDuration(left) };
  return [...(end.length > 0 ? [ends] : []), ...(start.length > 0 ? [starts] : [])];
}
