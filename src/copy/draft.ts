/** What a draft writes into a programme, and how each of its steps is told. */
import type { Change } from '../domain/draft/change.ts';
import type { Focus, HardActivity } from '../domain/draft/draft.ts';
import type { DraftWords } from '../domain/draft/sheet.ts';
import type { Arrival } from '../domain/draft/wish.ts';
import { type Ms, ms } from '../domain/units.ts';
import { length } from './times.ts';
import { capital } from './words.ts';

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
