/** What a leader reads of people by weeks: cells, their states, and what is known of a group. */
import type { BoardCell, GroupWeek, PersonRow, Spread } from '../domain/board/board.ts';
import { type CellLook, lookOf } from '../domain/board/cells.ts';
import { crc32 } from '../domain/exchange/crc32.ts';
import { effortOfTen } from './effort.ts';
import { many } from './grammar.ts';

export const board = {
  title: 'Who did what',
  /** Said once on the board, so that nobody reads it as a ranking. */
  compare:
    'Each session is set against what was meant for it. Two people’s ratings do not compare: one person’s 6 is another’s 4. Compare a person with their own weeks.',
  ordinary: 'A point more or less is ordinary.',
  heard: (heard: number, of: number): string => `Heard from ${heard} of ${of}`,
  noReply: (n: number): string => `No reply yet (${n})`,
  everyone: 'Everybody was heard',
  nobody: 'Nobody is on this board yet.',
  meant: (target: number): string => `Meant to be ${effortOfTen(target)}`,
} as const;

/** A number with one decimal at most: `6`, `5.5`. */
export const numberText = (value: number): string => String(Math.round(value * 10) / 10);

/** Points above or below what was meant, as short as can be: `+1`, `−1.5`, `±0`. */
export function gapText(gap: number): string {
  const size = numberText(Math.abs(gap));
  if (size === '0') return '±0';
  return gap > 0 ? `+${size}` : `−${size}`;
}

/** The same in words: "1 point harder than meant", "as meant". */
export function gapWords(gap: number): string {
  const size = Math.round(Math.abs(gap) * 10) / 10;
  if (size === 0) return 'as meant';
  const points = `${size} ${size === 1 ? 'point' : 'points'}`;
  return gap > 0 ? `${points} harder than meant` : `${points} easier than meant`;
}

const range = ({ min, max }: BoardCell['wanted'], dash: string): string =>
  min === max ? String(min) : `${min}${dash}${max}`;

/**
 * A number that stands for somebody who sent no name: the same each time, from which their secret
 * cannot be told. Two people may share one.
 */
export const numberOf = (person: string): string =>
  String(crc32(new TextEncoder().encode(person)) % 10_000).padStart(4, '0');

/** How a person is called on the board. */
export const calledOf = ({ name, person }: Pick<PersonRow, 'name' | 'person'>): string =>
  name === undefined || name.trim() === '' ? `No. ${numberOf(person)}` : name.trim();

const STATE_TEXT: Readonly<Record<Exclude<BoardCell['state'], 'heard'>, string>> = {
  'none-told': 'None told',
  unknown: 'No reply yet',
  ahead: 'Ahead',
};

const STATE_SENTENCE: Readonly<Record<Exclude<BoardCell['state'], 'heard'>, string>> = {
  'none-told': 'They have told since, and nothing of this week.',
  unknown: 'No reply yet.',
  ahead: 'This week has not begun.',
};

/** What stands in a cell: `2 of 2–3, +1`. Whoever told of a session never has "0 sessions". */
export function cellText(cell: BoardCell): string {
  if (cell.state !== 'heard') return STATE_TEXT[cell.state];
  const { done, sessions, wanted, gap } = cell;
  const count = done === 0 ? `${sessions.length} begun` : `${done} of ${range(wanted, '–')}`;
  return gap === undefined ? count : `${count}, ${gapText(gap)}`;
}

/** How a cell may be drawn, told in a word: what a legend says beside its shape. */
export const LOOK: Readonly<Record<CellLook, string>> = {
  'much-harder': 'Three points or more harder than meant',
  harder: 'Two points or more harder than meant',
  'as-meant': 'About as meant',
  easier: 'Two points or more easier than meant',
  'not-rated': 'Done, not rated',
  'none-told': 'Nothing told of it',
  unknown: 'No reply yet',
  ahead: 'Not begun',
};

/** What besides effort a cell is marked with, gravest first. */
export type CellMark = 'sign' | 'niggle' | 'cut-short';

export function marksOf({ signs, niggles, cutShort }: BoardCell): readonly CellMark[] {
  return [
    ...(signs > 0 ? (['sign'] as const) : []),
    ...(niggles > 0 ? (['niggle'] as const) : []),
    ...(cutShort > 0 ? (['cut-short'] as const) : []),
  ];
}

function heardSentences({ sessions, done, wanted, gap, signs, niggles, cutShort }: BoardCell) {
  const asked = range(wanted, ' to ');
  const listed = sessions.filter(({ id }) => id === undefined).length;
  return [
    done === 0
      ? `${many(sessions.length, 'session')} begun, ${asked} asked for.`
      : `${many(done, 'session')} done, ${asked} asked for.`,
    ...(done > 0 && sessions.length > done ? [`${sessions.length - done} more begun.`] : []),
    ...(listed > 0 ? [`${listed} known from the list alone.`] : []),
    gap === undefined ? 'Not rated.' : `Felt ${gapWords(gap)}.`,
    ...(signs > 0 ? [`${many(signs, 'warning sign')}.`] : []),
    ...(niggles > 0 ? [`${many(niggles, 'niggle')}.`] : []),
    ...(cutShort > 0 ? [`${cutShort} cut short.`] : []),
  ];
}

/** A cell in full, where its week is said beside it. */
export const cellWords = (cell: BoardCell): string =>
  cell.state === 'heard' ? heardSentences(cell).join(' ') : STATE_SENTENCE[cell.state];

/** A cell in full, for a screen reader and for the page of a person. */
export function cellSentence(cell: BoardCell, who?: string): string {
  const lead = who === undefined ? `Week ${cell.week}:` : `${who}, week ${cell.week}:`;
  return `${lead} ${cellWords(cell)}`;
}

/** A cell with all that a screen draws of it. */
export interface CellSaid {
  readonly text: string;
  readonly look: CellLook;
  readonly marks: readonly CellMark[];
  readonly sentence: string;
}

export const cellSaid = (cell: BoardCell, who?: string): CellSaid => ({
  text: cellText(cell),
  look: lookOf(cell),
  marks: marksOf(cell),
  sentence: cellSentence(cell, who),
});

/** The middle and the middle half of some values: "6, half between 5 and 7". */
export function spreadWords({ median, lower, upper, count }: Spread): string {
  const [low, high] = [numberText(lower), numberText(upper)];
  if (count < 2) return numberText(median);
  return low === high
    ? `${numberText(median)}, at least half of them just so`
    : `${numberText(median)}, half between ${low} and ${high}`;
}

function gapSentence({ median, lower, upper, count }: Spread): string {
  if (count < 2) return `That is ${gapWords(median)}.`;
  return lower === upper
    ? `That is ${gapWords(median)}.`
    : `That is ${gapWords(median)} in the middle, half between ${gapText(lower)} and ${gapText(upper)}.`;
}

/** What is known of a group in one week, sentence by sentence; for the leader's eyes. */
export function groupWeekSentences(week: GroupWeek): readonly string[] {
  const { heard, of, felt, gap, target, signs, niggles, cutShort, sessions } = week;
  if (heard === 0) return [`${board.heard(heard, of)}.`];
  return [
    `${board.heard(heard, of)}, ${many(sessions, 'session')}.`,
    felt === undefined
      ? 'Nobody rated yet.'
      : `Felt ${spreadWords(felt)} over ${many(felt.count, 'rated session')}; meant ${numberText(target)}.`,
    ...(gap === undefined ? [] : [gapSentence(gap)]),
    ...(signs > 0 ? [`${many(signs, 'warning sign')}.`] : []),
    ...(niggles > 0 ? [`${many(niggles, 'niggle')}.`] : []),
    ...(cutShort > 0 ? [`${many(cutShort, 'session')} cut short.`] : []),
  ];
}

/** "No reply yet (25)", or that everybody was heard. It is never shown as nothing done. */
export const noReplyText = ({ heard, of }: Pick<GroupWeek, 'heard' | 'of'>): string =>
  of > heard ? board.noReply(of - heard) : of === 0 ? board.nobody : board.everyone;

/** When somebody told last, and what they kept to themselves. */
export function tellingSentence(
  { heardAt, leftOut, byHand }: Pick<PersonRow, 'heardAt' | 'leftOut' | 'byHand'>,
  on: string,
): string {
  if (heardAt === undefined)
    return byHand ? 'Written in by you; nothing was told yet.' : 'Nothing was told yet.';
  const kept = leftOut === 0 ? '' : ` ${many(leftOut, 'session is', 'sessions are')} not told of.`;
  return `Told last on ${on}.${kept}`;
}
