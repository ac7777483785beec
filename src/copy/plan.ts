/** What is wrong with a session's shorthand, and what would be right: one sentence or two. */
import { ACTIVITIES } from '../domain/programme/plan.ts';
import type { PlanCode, PlanProblem } from '../domain/programme/problem.ts';

const LONGEST_QUOTE = 40;

/** What was found, short enough to stand in a sentence. */
function quoted(found: string): string {
  const letters = [...found.replace(/\s+/g, ' ')];
  const cut = letters.length > LONGEST_QUOTE;
  return `“${letters.slice(0, LONGEST_QUOTE).join('')}${cut ? '…' : ''}”`;
}

const of = (problem: PlanProblem, key: string): string => String(problem.detail?.[key] ?? '');
const has = (problem: PlanProblem, key: string): boolean => of(problem, key) !== '';
const all = `${ACTIVITIES.slice(0, -1).join(', ')} or ${ACTIVITIES.at(-1)}`;

const SENTENCES: Readonly<Record<PlanCode, (found: string, problem: PlanProblem) => string>> = {
  'bad-character': (found) =>
    `A character that cannot be seen stands here (${bare(found)}). Take it out.`,
  'bad-separator': (found) => `${found} does not divide steps. Write ; between them.`,
  'before-label': (found) => `Steps stand before ${found}. Move them behind its colon.`,
  'bracket-note': (found) =>
    `${found} has no steps in it. Write words for the runner in quotes, behind the step.`,
  bullet: (found) => `Take ${found} away. A new line begins a new step by itself.`,
  'clock-digits': (found) =>
    `${found} can be read in two ways. Write two digits after a colon, such as 1:05 or 1:50.`,
  'clock-seconds': (found, p) =>
    `${found} goes over 59 behind the colon. Did you mean ${of(p, 'write')}?`,
  colon: (found) => `${found} is an activity. Take its colon away.`,
  'count-after-step': (found) =>
    `${found} stands behind a step. Put what is repeated in brackets, as in 6 x (2 min run, 1 min walk).`,
  'count-over': (found, p) => `${found} times is too many. ${of(p, 'limit')} is the most.`,
  'count-range': (found) => `${found} leaves the number of times open. Choose one number.`,
  'count-zero': (found) => `${found} times leaves nothing to do. Write 1 or more.`,
  decimal: (found, p) => `${found} has a fraction. Write ${of(p, 'write')}.`,
  distance: (found) =>
    `${found} is a distance, and sessions are in time. Write how long it takes, such as 2 min.`,
  'duration-order': (found, p) =>
    `${found} is out of order. Write the longer unit first: ${of(p, 'write')}.`,
  'duration-over': (found, p) => `${found} adds up to ${of(p, 'write')}. Write that.`,
  'effort-missing': () => 'An effort is missing after @. Write 70%, 7/10, easy, moderate or hard.',
  'effort-over': (found) => `${found} is too much. The most is 100%, or 10/10.`,
  'effort-pace': (found) =>
    `${found} is a pace, and sessions go by effort. Write 70%, 7/10, easy, moderate or hard.`,
  'effort-range': (found, p) =>
    `${found} leaves the effort open. Choose one, such as ${of(p, 'write')}.`,
  'effort-twice': (found) => `${found} is a second effort. A step has one.`,
  'effort-unit': (found, p) => `${found} could be percent or tenths. Write ${of(p, 'write')}.`,
  'effort-unknown': (found) =>
    `${found} is not an effort. Write 70%, 7/10, easy, moderate or hard.`,
  empty: () => 'Nothing is written yet. A session is steps such as 5 min easy walk; 10 min run.',
  'empty-brackets': (found) => `${found} has nothing to repeat. Write the steps inside it.`,
  'extra-on-brackets': (found) =>
    `${found} stands behind brackets. An effort or a note belongs to one step: write it inside.`,
  'label-colon': (found) => `${found} names a part. Write a colon behind it.`,
  'label-empty': (found) => `${found} has no steps. Write some, or take the name away.`,
  'label-inside': (found) => `${found} stands inside brackets. Parts are named outside them.`,
  'label-needs-main': (found) =>
    `${found} is named, but the main part is not. Write “main:” before the main set.`,
  'label-order': (found, p) =>
    `${found} comes after ${of(p, 'later')}. The order is warm-up, main, cool-down.`,
  'label-twice': (found) => `${found} is there already. Each part is named once.`,
  'label-unknown': (found, p) =>
    has(p, 'near')
      ? `${found} is not a part. Did you mean ${of(p, 'near')}?`
      : `${found} is not a part. The parts are warm-up, main and cool-down.`,
  leftover: (found) =>
    `${found} does not fit here. A step is a time and an activity. Between steps stands ;`,
  'missing-activity': (found) =>
    `${found} has no activity. Write what to do, as in ${bare(found)} walk.`,
  'missing-count': () => 'How many times? Write a number before the brackets, as in 6 x (…).',
  'missing-duration': (found) =>
    `${found} has no time. Write how long, as in 5 min ${bare(found)}.`,
  'missing-repeated': (found) => `${found} repeats nothing. Write a step or brackets behind it.`,
  'missing-separator': (found) => `Something is missing before ${found}. Write ; between steps.`,
  'missing-times': (found) => `An x is missing behind ${found}. Write ${bare(found)} x (…).`,
  'missing-unit': (found, p) =>
    has(p, 'other')
      ? `${found} has no unit. Write ${of(p, 'write')} or ${of(p, 'other')}.`
      : `${found} has no unit. Write ${of(p, 'write')}.`,
  'needs-brackets': (_, p) =>
    `This can be read in two ways: ${of(p, 'together')} is ${of(p, 'togetherTotal')}, and ${of(p, 'apart')} is ${of(p, 'apartTotal')}. Write the one that you mean.`,
  'needs-brackets-count': (found, p) => `${found} needs brackets. Write ${of(p, 'write')}.`,
  'not-a-step': (found) =>
    `${found} is not a step. A step is a time and an activity, as in 5 min walk.`,
  'note-empty': () => 'This note is empty. Write something between the quotes, or take them away.',
  'note-long': (_, p) =>
    `This note has ${of(p, 'length')} characters. ${of(p, 'limit')} is the most.`,
  'note-open': (found) => `The note ${found} has no end. Close it with a quote on the same line.`,
  'note-twice': (found) => `${found} is a second note. A step has one.`,
  'nothing-between': (found, p) =>
    has(p, 'before')
      ? `Nothing stands between “${of(p, 'before')}” and ${found}. Write a step, or take one away.`
      : `Nothing stands before ${found}. Write a step, or take it away.`,
  'number-word': (found, p) => `Write ${found} in digits: ${of(p, 'write')}.`,
  'part-as-activity': (found, p) =>
    `${found} is a part and not an activity. Write ${of(p, 'part')}: and then its steps.`,
  range: (found) => `${found} leaves the time open. Choose one length.`,
  'session-long': (found, p) =>
    `The session comes to ${bare(found)}. ${of(p, 'limit')} is the most.`,
  'slash-outside': (found) =>
    `${found} joins steps inside brackets only. Here, write ; between steps.`,
  'step-long': (found, p) => `${found} is too long. ${of(p, 'limit')} is the most.`,
  'step-short': (found, p) =>
    `${found} is too short to be called out. ${of(p, 'limit')} is the least.`,
  'stray-close': () => 'This bracket closes nothing. Take it away, or write ( where it begins.',
  'text-long': (found, p) =>
    `This has ${bare(found)} characters. ${of(p, 'limit')} is the most for one session.`,
  'too-deep': () => 'Repeats can stand in one another twice, as rounds of sets. This is a third.',
  'unclosed-bracket': () => 'This bracket is not closed. Write ) behind its last step.',
  'unit-m': (found, p) =>
    `${found} could be metres, and sessions are in time. Write ${of(p, 'write')}.`,
  'unknown-activity': (found, p) =>
    has(p, 'near')
      ? `${found} is not an activity here. Did you mean ${of(p, 'near')}?`
      : `${found} is not an activity here. Choose ${all}.`,
  'unknown-unit': (found, p) => `${found} has no unit that is known here. Write ${of(p, 'write')}.`,
};

/** A quotation without its marks, to be written on. */
const bare = (found: string): string => found.slice(1, -1);

/** What was found and what would be right, without the place. */
export const planProblem = (problem: PlanProblem): string =>
  SENTENCES[problem.code](quoted(problem.found), problem);

/** Where it is, as a person counts. */
export const planPlace = ({ place }: PlanProblem): string =>
  `line ${place.line}, column ${place.column}`;
