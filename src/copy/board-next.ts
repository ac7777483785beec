/** What the answers suggest for a group's next week, and the numbers behind it. */

import { rule } from '../domain/advice/rules.ts';
import { boardLimit } from '../domain/board/limits.ts';
import type { Grounds, Suggestion, Way, WayReason } from '../domain/board/next-week.ts';
import { gapWords } from './board.ts';
import { capital } from './words.ts';

export const WAY: Readonly<Record<Way, string>> = {
  'go-on': 'Go on as planned',
  repeat: 'Repeat the week',
  ease: 'Ease off',
  stretch: 'Ask a little more',
};

/** What saying yes does, in a sentence. */
export const WAY_DOES: Readonly<Record<Way, (looked: number, next: number) => string>> = {
  'go-on': (_, next) => `Week ${next} stays as it is written.`,
  repeat: (looked, next) =>
    `The sessions of week ${looked} take the place of those in week ${next}.`,
  ease: (_, next) =>
    `Week ${next} becomes gentler than it is written: a set less, or shorter hard parts.`,
  stretch: (_, next) => `Week ${next} gets one step more: a set, or longer hard parts.`,
};

const people = (n: number): string => (n === 1 ? 'one person' : `${n} people`);
const points = rule('harder');

const REASON: Readonly<Record<WayReason, (g: Grounds) => string>> = {
  'too-few': ({ heard, of }) =>
    of === 0
      ? 'Nobody of this group is known here yet.'
      : `Heard from ${heard} of ${of}: too few to change the plan of a whole group. It takes ${boardLimit('fewest')} people, and a third of the group.`,
  'much-harder': ({ muchHarder, rated }) =>
    `${muchHarder} of ${rated} who rated found it ${rule('muchHarder')} points or more harder than meant.`,
  harder: ({ harder, rated }) =>
    `${harder} of ${rated} who rated found it ${points} points or more harder than meant.`,
  niggles: ({ hurt, heard }) => `${hurt} of ${heard} who told had a niggle or a warning sign.`,
  'cut-short': ({ cutShort, heard }) => `${cutShort} of ${heard} who told cut a session short.`,
  thin: ({ enough, heard }) =>
    `Only ${enough} of ${heard} who told had as many sessions as the week asks for.`,
  easier: ({ easier, rated }) =>
    `${easier} of ${rated} who rated found it ${points} points or more easier than meant, and nobody harder.`,
  lighter: () =>
    'The week was more than many could do, and the next one asks for less already: going on is the gentler way.',
  'event-near': () =>
    `The event is no more than ${rule('eventNear')} days away: nothing is added or made up for now.`,
  sign: () =>
    `It was easier than meant, but somebody in the group told of a warning sign within ${rule('afterSign')} days: nothing is raised.`,
  limits: () =>
    'It was easier than meant, but the next week is as large a step as it should be already.',
  'as-meant': ({ gap }) =>
    gap === undefined
      ? 'Nothing that was told speaks against it.'
      : `It felt ${gapWords(gap)} in the middle, and nothing else speaks against it.`,
};

export interface SuggestionSaid {
  readonly title: string;
  readonly why: string;
  readonly does: string;
  /** Every number behind it, one a line. */
  readonly numbers: readonly string[];
}

/** "Nobody", "One person", "4 people". */
const some = (n: number): string => (n === 0 ? 'nobody' : people(n));

function numbersOf(grounds: Grounds): readonly string[] {
  const { heard, of, rated, harder, easier, cutShort, enough, niggles, signs, gap } = grounds;
  if (heard === 0) return [];
  const asMeant = rated - harder - easier;
  return [
    `Heard from ${heard} of ${of}.`,
    `${enough} of ${heard} had as many sessions as the week asks for.`,
    rated === 0
      ? 'Nobody rated.'
      : `${rated} rated: ${harder} clearly harder, ${easier} clearly easier, ${asMeant} about as meant.`,
    ...(gap === undefined ? [] : [`In the middle it felt ${gapWords(gap)}.`]),
    `${capital(some(cutShort))} cut a session short.`,
    `${capital(some(niggles))} told of a niggle, ${some(signs)} of a warning sign.`,
  ];
}

export const suggestionSaid = ({
  way,
  why,
  grounds,
  looked,
  next,
}: Omit<Suggestion, 'group'>): SuggestionSaid => ({
  title: WAY[way],
  why: REASON[why](grounds),
  does: WAY_DOES[way](looked, next),
  numbers: numbersOf(grounds),
});

export const nextWords = {
  title: (week: number): string => `Week ${week}`,
  lead: 'What the answers suggest. You know your group; you decide.',
  apply: (way: Way): string => WAY[way],
  nothing:
    'There is no week to decide: the programme has not begun, or no week comes after this one.',
  unchanged: 'Nothing could be changed: the sessions are pinned, cannot be read, or have no room.',
  pinned: 'Pinned: it stays as you wrote it.',
  before: 'As it is written',
  after: 'As it would be',
} as const;
