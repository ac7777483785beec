/**
 * Messages to a whole group: last week in three sentences, and the sessions to come. They name
 * nobody, and of a group of whom fewer than three were heard they say nothing of how it felt.
 */
import { rule } from '../domain/advice/rules.ts';
import type { Board } from '../domain/board/board.ts';
import { isKnown } from '../domain/board/cells.ts';
import { boardLimit } from '../domain/board/limits.ts';
import { medianOf, tenths } from '../domain/board/spread.ts';
import { parsePlan } from '../domain/programme/parse.ts';
import { planLength } from '../domain/programme/totals.ts';
import { gapWords } from './board.ts';
import { effortOfTen } from './effort.ts';
import { listed, oneLine } from './grammar.ts';
import { planLine } from './plan-line.ts';
import { length, sentence } from './times.ts';

/** A week as it will be sent: of a programme, or of a sheet with the edits that were chosen. */
export interface WeekToCome {
  readonly focus: string;
  /** Percent. */
  readonly effort: number;
  readonly timesPerWeek: { readonly min: number; readonly max: number };
  readonly sessions: Readonly<Record<string, readonly { readonly text: string }[]>>;
}

export interface MessageAbout {
  readonly title: string;
  readonly leader: string;
  readonly board: Board;
  /** The week that was looked at, from 1. */
  readonly looked: number;
  /** The week to come, its number from 1; nothing: there is none. */
  readonly next?: { readonly number: number; readonly week: WeekToCome };
}

/** What may be said of some people's week together. */
interface Together {
  readonly heard: number;
  readonly of: number;
  /** People who rated, and the middle of how it felt to each. */
  readonly rated: number;
  readonly gap?: number;
  readonly enough: number;
  readonly hurt: number;
}

function togetherOf({ board, looked }: MessageAbout, groups: ReadonlySet<string>): Together {
  const cells = board.people
    .filter(({ group }) => groups.has(group))
    .flatMap(({ cells: all }) => all[looked - 1] ?? [])
    .filter(isKnown);
  const gaps = cells.flatMap(({ gap }) => gap ?? []);
  const gap = medianOf(gaps);
  return {
    heard: cells.length,
    of: board.groups
      .filter(({ id }) => groups.has(id))
      .reduce((sum, { people }) => sum + people, 0),
    rated: gaps.length,
    ...(gap !== undefined && { gap: tenths(gap) }),
    enough: cells.filter((cell) => cell.enough).length,
    hurt: cells.filter(({ niggles }) => niggles > 0).length,
  };
}

const FEWEST = boardLimit('fewest');

const heardSentence = (looked: number, { heard, of }: Together): string =>
  heard === 0
    ? `Of week ${looked} I have not heard yet.`
    : `Of week ${looked} I have heard from ${heard} of ${of}.`;

const TOO_FEW = 'That is too few to say how it felt: a word from you helps me.';
const AS_MEANT = 'It felt about as it was meant to, and that is right.';

/** How it felt to some people together, where enough of them rated. */
const feltBy = ({ rated, gap }: Together): number | undefined => (rated < FEWEST ? undefined : gap);

/** An ordinary point up or down is as meant. */
const isOrdinary = (gap: number): boolean => Math.abs(gap) <= rule('ordinary');

function feltSentence(together: Together): string {
  const gap = feltBy(together);
  if (gap === undefined) return TOO_FEW;
  if (isOrdinary(gap)) return AS_MEANT;
  return gap > 0
    ? `It felt ${gapWords(gap)}: slower is fine, and so is walking.`
    : `It felt ${gapWords(gap)}: a good sign.`;
}

/** Groups are not mixed into one number: each is told where it stood, if enough of it rated. */
function feltSentences(about: MessageAbout, groups: readonly string[]): string {
  const [only] = groups;
  if (groups.length === 1 && only !== undefined)
    return feltSentence(togetherOf(about, new Set([only])));
  const felt = about.board.groups
    .filter(({ id }) => groups.includes(id))
    .flatMap(({ id, name }) => {
      const gap = feltBy(togetherOf(about, new Set([id])));
      return gap === undefined ? [] : [{ name: oneLine(name), gap }];
    });
  const named = (holds: (gap: number) => boolean): string =>
    listed(felt.filter(({ gap }) => holds(gap)).map(({ name }) => name));
  const harder = named((gap) => gap > 0 && !isOrdinary(gap));
  const easier = named((gap) => gap < 0 && !isOrdinary(gap));
  if (felt.length === 0) return TOO_FEW;
  if (harder === '' && easier === '') return AS_MEANT;
  if (harder === '') return `To ${easier} it felt easier than it was meant to.`;
  return easier === ''
    ? `To ${harder} it felt harder than it was meant to: slower is fine, and so is walking.`
    : `To ${harder} it felt harder than it was meant to, to ${easier} easier.`;
}

/** What stands out of several; what one or two told is nobody else's. */
function standsOut({ heard, rated, enough, hurt }: Together): string {
  if (heard < FEWEST || rated < FEWEST)
    return 'Whoever had a hard week, or none: come as you are, nothing has to be made up for.';
  if (hurt >= FEWEST)
    return 'Some of you felt a niggle: walk when something hurts, and tell me before the next session.';
  return enough * 2 >= heard
    ? 'Most of you had all the sessions that the week asks for.'
    : 'For many the week was too full for all its sessions; that happens, and nothing has to be made up for.';
}

/** Last week in three sentences. */
export function lastWeek(about: MessageAbout, groups: readonly string[]): readonly string[] {
  const together = togetherOf(about, new Set(groups));
  return [heardSentence(about.looked, together), feltSentences(about, groups), standsOut(together)];
}

/** A session with its length; one that cannot be read as it is written. */
function sessionLine(text: string): string {
  const plan = parsePlan(text);
  if (!plan.ok) return oneLine(text);
  return `${length(planLength(plan.value))} in all. ${planLine(plan.value)}`;
}

const timesText = ({ min, max }: WeekToCome['timesPerWeek']): string =>
  `${min === max ? min : `${min} to ${max}`} ${max === 1 ? 'session' : 'sessions'}`;

function sessionLines(name: string, sessions: readonly { readonly text: string }[]) {
  if (sessions.length === 0) return [`${name}: no session this week.`];
  return sessions.map(({ text }, n) =>
    sessions.length === 1
      ? `${name}: ${sessionLine(text)}`
      : `${name}, session ${n + 1}: ${sessionLine(text)}`,
  );
}

function nextLines({ board, next }: MessageAbout, groups: readonly string[]): readonly string[] {
  if (next === undefined) return [];
  const { number, week } = next;
  const focus = sentence(oneLine(week.focus));
  const effort = `${timesText(week.timesPerWeek)}, and the whole should feel like ${effortOfTen(Math.round(week.effort / 10))}.`;
  return [
    `Week ${number}${focus === '' ? '' : `: ${focus}`}`,
    effort,
    ...board.groups
      .filter(({ id }) => groups.includes(id))
      .flatMap(({ id, name }) =>
        sessionLines(name, Object.hasOwn(week.sessions, id) ? (week.sessions[id] ?? []) : []),
      ),
  ];
}

const CARE =
  'Easing off is always allowed. If something feels wrong: stop, and get help; your local emergency number comes first.';

function message(about: MessageAbout, groups: readonly string[], to: string): string {
  const next = nextLines(about, groups);
  return [
    to,
    lastWeek(about, groups).join(' '),
    ...(next.length > 0 ? [next.join('\n')] : []),
    CARE,
    about.leader.trim(),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** To one group. @param group its id */
export function groupMessage(about: MessageAbout, group: string): string {
  const name = about.board.groups.find(({ id }) => id === group)?.name ?? group;
  return message(about, [group], `Hello ${oneLine(name)},`);
}

/** To everybody: all groups' last week together, and each one's sessions to come. */
export const clubMessage = (about: MessageAbout): string =>
  message(
    about,
    about.board.groups.map(({ id }) => id),
    `Hello all of “${oneLine(about.title)}”,`,
  );
