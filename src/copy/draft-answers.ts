/** Who arrives by a draft, and what has to be put right before there is one. */
import type { Answer, Reached } from '../domain/draft/answer.ts';
import { type Arrival, WISH, type WishProblem } from '../domain/draft/wish.ts';
import { listed } from './grammar.ts';
import { length } from './times.ts';

function reachedSentence({ code, reached, needed }: Reached, arrives: boolean): string {
  const [has, needs] = [length(reached), length(needed)];
  switch (code) {
    case 'run-on':
      return arrives
        ? `The longest run is ${has} without a walk. ${needs} are three quarters of the event, at 8 min per km.`
        : `The longest run is ${has} without a walk. It should be ${needs}: three quarters of the event, at 8 min per km.`;
    case 'on-feet':
      return arrives
        ? `The longest session is ${has}. ${needs} are enough to be ready for this distance; the day itself takes longer, at 12 min per km walking.`
        : `The longest session is ${has}. To be ready for this distance it should be ${needs}; the day itself takes longer, at 12 min per km walking.`;
    case 'share':
      return `The longest main set has ${has} of the harder part. It should be ${needs}.`;
  }
}

const GOAL: Readonly<Record<Arrival, string>> = {
  walk: 'walk the distance',
  mix: 'walk and run the distance',
  run: 'run the distance',
};
const LOWER: Readonly<Record<Arrival, string>> = {
  walk: 'walking it',
  mix: 'walking and running it',
  run: 'running it',
};

const weeksNeeded = (weeks: number): string =>
  weeks > WISH.weeks.max ? `${weeks} weeks in two programmes` : `${weeks} weeks`;

function insteadSentence({ instead, tooFar }: Answer): string {
  if (tooFar === true) return 'The distance is too long for any session that can be written here.';
  if (instead === undefined) return 'No programme of up to 26 weeks was found that would do.';
  const { session, weeks, pins, alone } = instead;
  if (alone === true)
    return 'By itself it would get there; the main sets that all groups share do not suit it.';
  const needs = [
    ...(weeks === undefined ? [] : [weeksNeeded(weeks)]),
    ...(session === undefined ? [] : [`sessions of ${length(session)}`]),
    ...(pins === undefined ? [] : ['a pinned session less']),
  ];
  return `It would take ${listed(needs)}.`;
}

/** Whether a group arrives, how near it comes, and what would do. */
export function answerSentences(answer: Answer, name: string): readonly string[] {
  const { arrive, arrives, reached, lower } = answer;
  if (arrives)
    return [`${name} should be able to ${GOAL[arrive]}.`, reachedSentence(reached, true)];
  return [
    `${name} does not get there in this time.`,
    reachedSentence(reached, false),
    insteadSentence(answer),
    ...(lower === undefined ? [] : [`As it is, ${LOWER[lower]} is within reach.`]),
  ];
}

const inMinutes = ({ min, max }: { min: number; max: number }): string =>
  `${min / 60_000} to ${max / 60_000} min`;

const RANGE: Readonly<Partial<Record<WishProblem['field'], string>>> = {
  weeks: `Write a number of weeks from ${WISH.weeks.min} to ${WISH.weeks.max}.`,
  session: `Write a length from ${inMinutes(WISH.session)}.`,
  walk: `Write the longest walk: ${inMinutes(WISH.walk)}.`,
  run: `Write the longest run: ${inMinutes(WISH.run)}. 0 means none yet.`,
  distance: `Write a distance from ${WISH.distanceM.min / 1000} to ${WISH.distanceM.max / 1000} km.`,
  groups: `A programme has ${WISH.groups.min} to ${WISH.groups.max} groups.`,
};

/** What to put right, beside its field. */
export function wishSentence(problem: WishProblem): string {
  switch (problem.code) {
    case 'range':
      return RANGE[problem.field] ?? '';
    case 'date':
      return 'Write a date of the calendar, or leave it empty.';
    case 'monday':
      return 'Weeks begin on a Monday. Choose a Monday, or leave it empty.';
    case 'before-start':
      return 'The event is before the first week. Choose a later day.';
    case 'name':
      return 'Give the group a name of up to 80 letters.';
    case 'name-twice':
      return 'Another group has this name.';
  }
}
