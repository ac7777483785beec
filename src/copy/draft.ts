/** Drafting a programme: what is asked, how each step is told, and who arrives. */
import type { Answer, Reached } from '../domain/draft/answer.ts';
import type { Change } from '../domain/draft/change.ts';
import type { Focus, HardActivity } from '../domain/draft/draft.ts';
import type { DraftWords } from '../domain/draft/sheet.ts';
import { type Arrival, WISH, type WishProblem } from '../domain/draft/wish.ts';
import { type Ms, ms } from '../domain/units.ts';
import { length } from './times.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** One line for each week, for the people who take part. */
const FOCUS: Readonly<Record<Focus, string>> = {
  rhythm: 'Find your rhythm. Start slower than feels right.',
  talk: 'Talk as you go. Whole sentences mean the pace is right.',
  'same-pace': 'The last set as fast as the first, and no faster.',
  'real-walks': 'Let the walks be real walks: breath calm before you go on.',
  tall: 'Stand tall, short steps, soft shoulders.',
  'something-left': 'Finish every session with something left.',
  patience: 'Some days feel heavy. Turning up is enough.',
  longest: 'The longest week. Go slowly, and you will get round.',
  event: 'Light legs. Rest well, then enjoy the day.',
};

const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

export const draftWords: DraftWords = {
  focus: FOCUS,
  title: (weeks, event) => {
    const n = capital(NUMBERS[weeks] ?? String(weeks));
    return event.trim() === '' ? `${n} weeks` : `${n} weeks to ${event.trim()}`;
  },
};

export const ARRIVE: Readonly<Record<Arrival, readonly [name: string, help: string]>> = {
  walk: ['Walk it', 'Brisk walking all the way'],
  mix: ['Walk and run it', 'Running about half of the time'],
  run: ['Run all of it', 'Without a walk'],
};

/** The harder part of a set, as a thing that one does more of. */
export const HARD: Readonly<Record<HardActivity, string>> = {
  'brisk walk': 'brisk walking',
  'easy jog': 'jogging',
  run: 'running',
};

// ---- steps -----------------------------------------------------------------------------------

const size = (by: number): Ms => ms(Math.abs(by));
const longer = (by: Ms): string => `${length(size(by))} ${by > 0 ? 'longer' : 'shorter'}`;
const more = (by: Ms, what: string): string =>
  `${length(size(by))} ${by > 0 ? 'more' : 'less'} ${what}`;

const moreSets = (sets: number): string => {
  const n = Math.abs(sets);
  const count = n === 1 ? 'one set' : `${NUMBERS[n] ?? n} sets`;
  return `${count} ${sets > 0 ? 'more' : 'fewer'} than last week`;
};

function setsSentence(change: Extract<Change, { code: 'sets' }>, what: string): string {
  const { sets, hard, easy } = change;
  const walks = what === 'brisk walking' ? 'easier walks' : 'walks';
  const said = [
    ...(sets === 0 ? [] : [moreSets(sets)]),
    ...(hard === 0 ? [] : [`${more(hard, what)} in each set`]),
    ...(easy === 0 ? [] : [`the ${walks} ${longer(easy)}`]),
  ];
  const rest =
    said.length > 1
      ? ''
      : hard !== 0
        ? `, the ${walks} stay`
        : sets !== 0
          ? ', each as it was'
          : `, the ${what} stays`;
  return `${capital(said.join(', '))}${rest}.`;
}

function runsSentence(change: Extract<Change, { code: 'runs' }>): string {
  const { others, first, other, easy } = change;
  if (others < 0) return `Two runs instead of three, the first ${firstLonger(first)}.`;
  if (others > 0) return `Three runs instead of two, the first ${firstLonger(first)}.`;
  const said = [
    ...(first === 0 ? [] : [`the first run is ${longer(first)}`]),
    ...(other === 0 ? [] : [`what follows it ${longer(other)}`]),
    ...(easy === 0 ? [] : [`the walk ${longer(easy)}`]),
  ];
  return `${capital(said.join(', '))}.`;
}
const firstLonger = (by: Ms): string => (by === 0 ? 'as long as last week' : longer(by));

const inAll = (by: Ms, what: string): string =>
  by === 0 ? `as much ${what} in all as last week` : `${more(by, what)} in all`;

/**
 * The step of one week for one group, in a sentence.
 *
 * @param what what the group does in the harder part: "running", "jogging", "brisk walking"
 */
export function changeSentence(change: Change, what: string): string {
  switch (change.code) {
    case 'first':
      return 'A first week within what they can do today.';
    case 'same':
      return 'The same as last week, to get used to it.';
    case 'pinned':
      return 'Pinned: it stays as you wrote it.';
    case 'sets':
      return setsSentence(change, what);
    case 'runs':
      return runsSentence(change);
    case 'on':
      return change.by === 0
        ? `As long as last week, without a break.`
        : `${capital(more(change.by, what))}, without a break.`;
    case 'to-sets':
      return `In sets again: ${inAll(change.by, what)}.`;
    case 'to-runs':
      return `One long run first, then the rest after a walk: ${inAll(change.by, what)}.`;
    case 'to-on':
      return `In one go, without a break: ${inAll(change.by, what)}.`;
    case 'light':
      return `A light week before the event: main set ${length(change.main)} instead of ${length(change.before)}.`;
    case 'aside':
      return `Shorter this week, to end with the pinned session: main set ${length(change.main)}.`;
  }
}

// ---- who arrives -----------------------------------------------------------------------------

function reachedSentence({ code, reached, needed }: Reached, arrives: boolean): string {
  const [has, needs] = [length(reached), length(needed)];
  switch (code) {
    case 'run-on':
      return arrives
        ? `The longest run is ${has} without a walk. ${needs} are three quarters of the event, at 8 min per km.`
        : `The longest run is ${has} without a walk. It should be ${needs}: three quarters of the event, at 8 min per km.`;
    case 'on-feet':
      return arrives
        ? `The longest session is ${has}. ${needs} are enough for this distance, at 12 min per km walking.`
        : `The longest session is ${has}. For this distance it should be ${needs}, at 12 min per km walking.`;
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

const listed = (words: readonly string[]): string =>
  [words.slice(0, -1).join(', '), ...words.slice(-1)].filter((part) => part !== '').join(' and ');

const weeksNeeded = (weeks: number): string =>
  weeks > WISH.weeks.max ? `${weeks} weeks in two programmes` : `${weeks} weeks`;

function insteadSentence({ instead, tooFar }: Answer): string {
  if (tooFar === true) return 'The distance is too long for any session that can be written here.';
  if (instead === undefined) return 'No programme of up to 26 weeks was found that would do.';
  const { session, weeks, pins } = instead;
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

// ---- the form --------------------------------------------------------------------------------

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
